"""An item as asked, and the clock of a round: for whoever is asked. Units as in `public_model.py`."""

from dataclasses import dataclass

from quizroom.questions.model import Family, Format
from quizroom.views.picture import PictureFace


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionFace:
    """An option as asked."""

    letter: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemFace:
    """An item as asked: nothing in it depends on the key."""

    round: int
    family: Family
    format: Format
    stem: str
    options: tuple[OptionFace, ...]
    pick: int
    stems: tuple[str, ...]
    """The rows of a matching, else empty."""
    warm_up: bool
    picture: PictureFace | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ClockFace:
    """The round's clock. Running: `closes_at`. Standing: `left_ms`. Untimed: neither, `limit_ms` None."""

    limit_ms: int | None
    closes_at: int | None
    left_ms: int | None
    paused: bool
