"""The full record of a muscle, in the order in which it is read: proximal to distal.

A `Record` holds display text only, so that it can be stored with a dealt item and
shown unchanged even when the content is edited later.
"""

from dataclasses import dataclass

from quizroom.knowledge.model import Access, NoteKind, Role, Status, Tissue


@dataclass(frozen=True, slots=True, kw_only=True)
class Site:
    """One attachment: the landmark, the bone it lies on, finer words."""

    landmark: str
    bone: str
    label: str
    detail: str
    tissue: Tissue
    status: Status
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Head:
    """A part of the muscle with its own attachments; `name` is empty for the whole muscle."""

    name: str
    origins: tuple[Site, ...]
    insertions: tuple[Site, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ActionLine:
    """What is done at a joint, by which part ("" for the whole muscle), under which condition."""

    movement: str
    verb: str
    role: Role
    part: str
    condition: str
    status: Status
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class JointRow:
    """A joint that the muscle crosses with its actions there; `parts` is empty if all cross it."""

    joint: str
    parts: tuple[str, ...]
    actions: tuple[ActionLine, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NervePath:
    """A motor nerve from its roots to the branch that ends in the muscle."""

    nerve: str
    path: tuple[str, ...]
    roots: tuple[str, ...]
    main: tuple[str, ...]
    part: str
    branch: str
    status: Status
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ArteryPath:
    """An artery from its trunk to the branch that reaches the muscle."""

    artery: str
    path: tuple[str, ...]
    part: str
    branch: str
    status: Status
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class LookAlikeLine:
    """Terms to keep apart from this muscle or its landmarks."""

    terms: tuple[str, ...]
    tell: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DifferLine:
    """A point on which books differ."""

    about: str
    text: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteLine:
    """A teaching note, or a clinical one that is shown with the caution."""

    text: str
    kind: NoteKind
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SourceLine:
    """A source in full, once, at the foot of the record."""

    id: str
    title: str
    access: Access


@dataclass(frozen=True, slots=True, kw_only=True)
class NameLine:
    """Another name of the muscle and what sort of name it is."""

    term: str
    kind: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Record:
    """Everything that is known of one muscle, ready to be looked at."""

    muscle: str
    name: str
    latin: str
    meaning: str
    region: str
    compartment: str
    layer: str
    names: tuple[NameLine, ...]
    heads: tuple[Head, ...]
    joints: tuple[JointRow, ...]
    nerves: tuple[NervePath, ...]
    arteries: tuple[ArteryPath, ...]
    lookalikes: tuple[LookAlikeLine, ...]
    differ: tuple[DifferLine, ...]
    notes: tuple[NoteLine, ...]
    cautions: tuple[str, ...]
    sources: tuple[SourceLine, ...]
