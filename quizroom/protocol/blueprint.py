"""The blueprint on the wire: the grid that the desk offers, and what the host made of it."""

from dataclasses import dataclass
from typing import Annotated

from pydantic import Field

from quizroom.questions.blueprint import Aim

Rounds = Annotated[int, Field(ge=0, le=60)]


@dataclass(frozen=True, slots=True, kw_only=True)
class BlueprintCell:
    """So many rounds of one family about the muscles of one region."""

    region: Annotated[str, Field(max_length=80)]
    family: Annotated[str, Field(max_length=80)]
    rounds: Rounds


@dataclass(frozen=True, slots=True, kw_only=True)
class BlueprintChoice:
    """The grid as the host filled it in.

    With `share` the numbers of the cells are weights, by which so many rounds are shared out (largest
    remainder). Rounds to warm up come first and beside those of the grid.
    """

    cells: Annotated[tuple[BlueprintCell, ...], Field(max_length=1000)]
    share: Annotated[int, Field(ge=1, le=60)] | None = None
    interleave: bool = True
    warm_up: Annotated[int, Field(ge=0, le=3)] = 0
    aim: Aim = "mixed"


@dataclass(frozen=True, slots=True, kw_only=True)
class RegionLine:
    """A row of the grid."""

    id: str
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class CellLine:
    """A cell of the grid: how many rounds it can take, why none if none, and its even share."""

    region: str
    family: str
    most: int
    reason: str
    rounds: int


@dataclass(frozen=True, slots=True, kw_only=True)
class BlueprintGrid:
    """What a course list can be dealt by; served as JSON at /desk/blueprint/<course>."""

    course: str
    regions: tuple[RegionLine, ...]
    families: tuple[str, ...]
    cells: tuple[CellLine, ...]
    warm_ups: int
    """How many rounds to warm up there can be."""
