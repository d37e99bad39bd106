"""Orders about benches."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class TakeBench:
    """A player takes a bench by its name; the first to name it founds it, an empty name leaves."""

    player: str
    bench: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SeatAtBench:
    """The host moves a player to a bench. `by` is the name of the host."""

    player: str
    bench: str
    by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawBenches:
    """Draw benches for everybody who is here; `by` is empty for the host, else the opener of a group.

    `seed` makes the draw; the same seed over the same players draws the same benches. `host` is the
    name of the host, if one draws.
    """

    seed: int
    by: str = ""
    host: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class AnswerForBench:
    """A member hands in for the bench; the member has answered alone before."""

    player: str
    round: int
    choice: tuple[str, ...] = ()
    typed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class RenameBench:
    """The host gives a bench another name; what it has handed in stays its own. `by` names the host."""

    bench: str
    name: str
    by: str = ""


BenchCommand = RenameBench | TakeBench | SeatAtBench | DrawBenches | AnswerForBench
