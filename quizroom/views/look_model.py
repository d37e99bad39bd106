"""What a player sees of one look: an item asked again, what was missed then, and how it is solved.

A look is made only from rounds that were explained, or for practice alone: so its solution may go
along, and the page can judge lettered answers while it is off line. Times are milliseconds of server
time since 1970 (UTC).
"""

from dataclasses import dataclass

from quizroom.knowledge.record import Record
from quizroom.views.item_model import ItemFace


@dataclass(frozen=True, slots=True, kw_only=True)
class SolvedOption:
    """An option with the reason why it is right or wrong."""

    letter: str
    text: str
    is_key: bool
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SolvedRow:
    """A place of an ordering (`stem` is empty) or a row of a matching, with its right option and why."""

    stem: str
    letter: str
    text: str
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SolvedTerm:
    """Something that a typed answer may name, and every exact term for it."""

    text: str
    terms: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Solution:
    """The key and everything that explains it. An ordering or a matching has `rows` in place of `options`."""

    key: tuple[str, ...]
    options: tuple[SolvedOption, ...]
    rows: tuple[SolvedRow, ...]
    accepted: tuple[SolvedTerm, ...]
    key_text: tuple[str, ...]
    why: str
    contrast: str | None
    """The true fact about what was chosen in the review, if that was wrong."""
    records: tuple[Record, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class MissedFace:
    """What was asked in the review, and what was answered ("" for nothing)."""

    title: str
    at: int
    stem: str
    chosen: str
    key_text: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LookFlag:
    """Where a flag of a look goes: to the host of this review, at the round whose fact it asks again."""

    review: str
    round: int
    up: bool
    text: str
    """What the player wrote with the flag that is up there."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Look:
    """An item as asked again, alone. `label` says in words which fact it is about."""

    id: str
    set: str
    face: ItemFace
    seconds: int
    region: str
    label: str
    missed: MissedFace | None
    solution: Solution
    flag: LookFlag | None = None
    """None: no host would read a flag, because the item was dealt for this player alone, or in a group."""
