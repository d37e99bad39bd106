"""What came out of a closed round, for anybody in the room. Units as in `public_model.py`."""

from dataclasses import dataclass
from typing import Literal


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionResult:
    """An option after closing; `reason` is there once the record is shown (desk: always)."""

    letter: str
    text: str
    is_key: bool
    count: int
    share: float
    reason: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class LetterCount:
    """How many put this letter here."""

    letter: str
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class RowResult:
    """A place of an ordering or a row of a matching after closing, in the right order.

    `stem` is the row's (empty for a place); `letter` and `text` are those of the right option; `count`
    and `share` tell who had it right, `letters` what was put here instead, most frequent first.
    """

    stem: str
    letter: str
    text: str
    count: int
    share: float
    letters: tuple[LetterCount, ...]
    reason: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class TypedResult:
    """Typed answers that came to the same verdict. Only terms known to anatomy are spelled out in public."""

    text: str
    verdict: Literal["right", "half", "wrong", "doubtful"]
    count: int
    """People who wrote at least one such word."""
    share: float
    """These of all who answered, 0 to 1. In a list one person may stand in several rows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ResultFace:
    """What came out of a closed round. `why` is there once the record is shown.

    An ordering or a matching has `rows` in place of `options`.
    """

    options: tuple[OptionResult, ...]
    rows: tuple[RowResult, ...]
    typed: tuple[TypedResult, ...]
    key_text: tuple[str, ...]
    why: str | None
    answered: int
    of: int
    mean_mark: float | None
    struck: bool
    by_host: bool = False
    """Whether the host wrote the item."""
    rekeyed: str
    """That the host keyed the item anew, and how it was dealt; "" where nobody did."""
