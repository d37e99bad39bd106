"""One session at one server: everybody joins, then rounds are opened, answered, closed and explained."""

from collections.abc import Callable
from dataclasses import dataclass, field
from time import perf_counter

from quizroom.measuring.crowd import Stalled
from quizroom.measuring.ears import Step
from quizroom.measuring.sides import Bytes, Side

SETTLE_S = 0.65
"""Longer than the counts of the last answers wait to be told."""
SPREAD_S = 2.0
SPREAD_ROUNDS = 3
"""In so many rounds of a session everybody changes the answer once more, at leisure."""
LETTERS = "ABC"


@dataclass(slots=True)
class Session:
    """What came out. Times and CPU in seconds; one value a round, except for joining."""

    size: int
    join_s: float = 0.0
    join_cpu_s: float = 0.0
    kib: float = 0.0
    """Memory of one connection, with its seat in the room."""
    accepted_deflate: int = 0
    last_s: dict[Step, list[float]] = field(default_factory=dict)
    """From the host's word to the last player who has heard of the step."""
    own_s: dict[Step, list[float]] = field(default_factory=dict)
    """Likewise, to the last player who has the own view as well."""
    step_cpu_s: dict[Step, list[float]] = field(default_factory=dict)
    answers_a_second: list[float] = field(default_factory=list)
    answers_cpu_s: list[float] = field(default_factory=list)
    acks_s: list[list[float]] = field(default_factory=list)
    """Of the answers of a round, spread over two seconds."""
    round_cpu_s: list[float] = field(default_factory=list)
    refusals: int = 0
    rounds: int = 0


def play(side: Side, size: int, *, rounds: int, offers_deflate: bool, keep: Bytes | None = None) -> Session:
    """Play a whole session. What the server sends is noted in `keep`, for the floor to repeat."""
    session = Session(size=size)
    _join(side, session, offers_deflate=offers_deflate)
    if keep is not None:
        keep.reply_to_join = side.ears.sample["reply"]
    for number in range(1, rounds + 1):
        _round(side, session, number, keep)
    side.crowd.listen(SETTLE_S)
    session.refusals = len(side.ears.refusals)
    return session


def _join(side: Side, session: Session, *, offers_deflate: bool) -> None:
    side.crowd.listen(0.2)
    side.ears.clear()
    kib, cpu, began = side.server.kib(), side.server.cpu_s(), perf_counter()
    side.crowd.connect(range(session.size), offers_deflate=offers_deflate)
    side.crowd.until(lambda: side.ears.count["reply"] >= session.size, "everybody to be in")
    if side.ears.refusals:
        raise Stalled(f"a player was not let in: {side.ears.refusals[0]!r}")
    session.join_s = perf_counter() - began
    side.crowd.listen(0.05)
    session.join_cpu_s = side.server.cpu_s() - cpu
    side.crowd.listen(SETTLE_S)
    session.kib = (side.server.kib() - kib) / session.size
    session.accepted_deflate = side.crowd.accepted_deflate


def _round(side: Side, session: Session, number: int, keep: Bytes | None) -> None:
    cpu = side.server.cpu_s()
    _step(side, session, "opening", number, keep)
    _all_at_once(side, session, number)
    _note(keep, lambda kept: _keep_replies(side, kept))
    cpu += _spread(side, session, number) if number <= SPREAD_ROUNDS else 0.0
    _step(side, session, "closing", number, keep)
    _step(side, session, "record", number, keep)
    session.round_cpu_s.append(side.server.cpu_s() - cpu)
    session.rounds += 1


def _spread(side: Side, session: Session, number: int) -> float:
    """Let everybody answer once more, one after another over two seconds; return the CPU that it took."""
    side.ears.clear()
    cpu = side.server.cpu_s()
    sent: list[float] = []
    pause = SPREAD_S / session.size
    began = perf_counter()
    for member in range(session.size):
        while (left := began + member * pause - perf_counter()) > 0:
            side.crowd.hear(left)
        frame = side.answer(number, LETTERS[(member + 1) % 3])
        sent.append(perf_counter())
        side.crowd.say(member, frame)
        side.crowd.hear(0.0)
    side.crowd.until(lambda: side.ears.count["reply"] >= session.size, "acknowledgements")
    session.acks_s.append([side.ears.reply_at[member] - at for member, at in enumerate(sent)])
    side.crowd.listen(SETTLE_S)
    return side.server.cpu_s() - cpu


def _all_at_once(side: Side, session: Session, number: int) -> None:
    ready = [side.answer(number, LETTERS[member % 3]) for member in range(session.size)]
    side.ears.clear()
    cpu, began = side.server.cpu_s(), perf_counter()
    for member, frame in enumerate(ready):
        side.crowd.say(member, frame)
    side.crowd.until(lambda: side.ears.count["reply"] >= session.size, "acknowledgements")
    seconds = max(side.ears.reply_at.values()) - began
    session.answers_a_second.append(session.size / seconds)
    side.crowd.listen(SETTLE_S)
    session.answers_cpu_s.append(side.server.cpu_s() - cpu)


def _step(side: Side, session: Session, step: Step, number: int, keep: Bytes | None) -> None:
    with_own = step != "opening"
    side.ears.clear()
    cpu, began = side.server.cpu_s(), perf_counter()
    side.step(step, number)
    side.crowd.until(lambda: side.ears.count["public"] >= session.size, f"the {step} of round {number}")
    session.last_s.setdefault(step, []).append(side.ears.last_at["public"] - began)
    if with_own:
        side.crowd.until(lambda: side.ears.count["own"] >= session.size, f"own views, {step} of {number}")
        session.own_s.setdefault(step, []).append(side.ears.last_at["own"] - began)
    side.crowd.listen(0.05)
    session.step_cpu_s.setdefault(step, []).append(side.server.cpu_s() - cpu)
    _note(keep, lambda kept: _keep_views(side, step, kept, with_own=with_own))


def _note(keep: Bytes | None, noting: Callable[[Bytes], None]) -> None:
    if keep is not None:
        noting(keep)


def _keep_views(side: Side, step: Step, keep: Bytes, *, with_own: bool) -> None:
    keep.public[step] = side.ears.sample["public"]
    if with_own:
        keep.own[step] = side.ears.sample["own"]


def _keep_replies(side: Side, keep: Bytes) -> None:
    keep.reply_to_answer, keep.tally = side.ears.sample["reply"], side.ears.sample["tally"]
