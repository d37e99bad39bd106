"""What the page of a host's own items sends and is shown: JSON below /desk/own."""

from dataclasses import dataclass

from quizroom.questions.model import Family
from quizroom.questions.own import OwnFormat, OwnItem
from quizroom.questions.own_findings import Finding
from quizroom.views.item_model import ItemFace
from quizroom.views.look_model import Solution


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnItemLine:
    """An item of the library in its list; `to_mend` counts what still keeps it out of reviews."""

    id: str
    stem: str
    format: OwnFormat
    family: Family
    region: str
    muscles: tuple[str, ...]
    """Their names."""
    has_picture: bool
    to_mend: int
    changed_at: int


@dataclass(frozen=True, slots=True, kw_only=True)
class MuscleChoice:
    """A muscle that an item may be about."""

    id: str
    name: str
    region: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnLibrary:
    """The library, the one changed last first, and what an item may be about."""

    items: tuple[OwnItemLine, ...]
    families: tuple[Family, ...]
    regions: tuple[str, ...]
    muscles: tuple[MuscleChoice, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnPreview:
    """The item as the seat sees it before and after the round."""

    face: ItemFace
    seconds: int
    solution: Solution


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnItemFace:
    """An item with all that is wrong with it; `preview` is there once nothing is an error.

    `id` is empty for one that was only checked.
    """

    id: str
    own: OwnItem
    findings: tuple[Finding, ...]
    preview: OwnPreview | None


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureKept:
    """A picture that was uploaded; width and height are pixels."""

    name: str
    address: str
    width: int
    height: int


@dataclass(frozen=True, slots=True, kw_only=True)
class DeskProblem:
    """Why a request of the desk was not carried out, and what to do."""

    problem: str
