"""What a study sheet asks of a record: one row for each thing to write down, proximal to distal."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal, Protocol, TypeVar

from quizroom.knowledge.model import Status
from quizroom.knowledge.record import ActionLine, ArteryPath, Head, JointRow, NervePath, Record, Site
from quizroom.questions.model import Family

RowKind = Literal["name", "origin", "insertion", "joint", "nerve", "root", "artery", "compartment"]

ROWS_OF_FAMILY: dict[Family, tuple[RowKind, ...]] = {
    "origin": ("origin",),
    "insertion": ("insertion",),
    "action": ("joint",),
    "prime_mover": ("joint",),
    "joint": ("joint",),
    "antagonist": ("joint",),
    "nerve": ("nerve",),
    "root": ("root",),
    "lesion": ("nerve",),
    "two_step": ("joint", "nerve"),
    "artery": ("artery",),
    "compartment": ("compartment",),
    "name": ("name",),
}
"""Which rows a missed item points to. A family that is not here points to the record as a whole."""


@dataclass(frozen=True, slots=True, kw_only=True)
class StudyRow:
    """One line of the sheet: what is asked, the answer by the standard account, whether it was missed."""

    kind: RowKind
    label: str
    answer: str
    missed: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class StudyEntry:
    """A muscle on the sheet. `differ` names the points on which books differ."""

    name: str
    place: str
    rows: tuple[StudyRow, ...]
    differ: tuple[str, ...]
    cautions: tuple[str, ...]


def study_entry(record: Record, missed: frozenset[Family]) -> StudyEntry:
    """The rows of a record; `missed` are the families of the items that were missed about it."""
    asked = {kind for family in missed for kind in ROWS_OF_FAMILY.get(family, ())}
    rows = tuple(
        StudyRow(kind=kind, label=label, answer=answer, missed=kind in asked)
        for kind, label, answer in _rows(record)
        if answer
    )
    return StudyEntry(
        name=record.name,
        # The compartment is one of the blanks, so only the region may stand in the title.
        place=record.region,
        rows=rows,
        differ=tuple(dict.fromkeys(line.about for line in record.differ)),
        cautions=record.cautions,
    )


def _rows(record: Record) -> Iterator[tuple[RowKind, str, str]]:
    yield "name", "Latin, and what it means", f"{record.latin}: {record.meaning}"
    for head in record.heads:
        yield "origin", _of("Origin", head), _sites(head.origins)
    for head in record.heads:
        yield "insertion", _of("Insertion", head), _sites(head.insertions)
    for joint in record.joints:
        yield "joint", f"At the {joint.joint}", _actions(joint)
    yield "nerve", "Nerve", "; ".join(_nerve(nerve) for nerve in _standard(record.nerves))
    yield "root", "Roots", "; ".join(_roots(nerve) for nerve in _standard(record.nerves) if nerve.roots)
    yield "artery", "Artery", "; ".join(_artery(artery) for artery in _standard(record.arteries))
    yield "compartment", "Compartment", record.compartment


def _of(word: str, head: Head) -> str:
    return f"{word}, {head.name}" if head.name else word


class _Rated(Protocol):
    @property
    def status(self) -> Status: ...


Rated = TypeVar("Rated", bound=_Rated)


def _standard(facts: Iterable[Rated]) -> tuple[Rated, ...]:
    """The standard account; where books have none, what they give at all."""
    known = tuple(facts)
    return tuple(fact for fact in known if fact.status == "core") or tuple(
        fact for fact in known if fact.status == "variant"
    )


def _sites(sites: Iterable[Site]) -> str:
    return "; ".join(
        f"{site.label} ({site.detail})" if site.detail else site.label for site in _standard(sites)
    )


def _actions(joint: JointRow) -> str:
    return "; ".join(_action(action) for action in _standard(joint.actions)) or "crossed, no action listed"


def _action(action: ActionLine) -> str:
    words = action.movement if action.role == "prime" else f"{action.movement} (assists)"
    aside = ", ".join(part for part in (action.part, action.condition) if part)
    return f"{words}, {aside}" if aside else words


def _nerve(nerve: NervePath) -> str:
    aside = f" to the {nerve.part}" if nerve.part else ""
    return f"{nerve.nerve}{aside}"


def _roots(nerve: NervePath) -> str:
    chiefly = f", chiefly {', '.join(nerve.main)}" if 0 < len(nerve.main) < len(nerve.roots) else ""
    aside = f" ({nerve.part})" if nerve.part else ""
    return f"{', '.join(nerve.roots)}{chiefly}{aside}"


def _artery(artery: ArteryPath) -> str:
    aside = ", ".join(part for part in (artery.branch, artery.part) if part)
    return f"{artery.artery} ({aside})" if aside else artery.artery
