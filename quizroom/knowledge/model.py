"""The values that the content files are read into.

Every class mirrors one table of `content/`; the ids are the table keys or file names.
All are frozen: the knowledge base never changes while the program runs.
"""

from dataclasses import dataclass
from typing import Literal

Status = Literal["core", "variant", "minority"]
Role = Literal["prime", "assistant"]
Access = Literal["compared", "read", "from memory", "common practice"]
NameKind = Literal["synonym", "short", "old", "abbreviation", "latin", "eponym"]
NoteKind = Literal["teaching", "clinical"]
Tissue = Literal["bone", "soft"]
Position = Literal["proximal", "shaft", "distal", ""]
TermKind = Literal["muscle", "landmark", "bone", "nerve", "artery", "movement", "joint"]
NerveKind = Literal["root", "trunk", "division", "cord", "plexus", "nerve", "branch"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """Where facts come from. `access` tells honestly how the text was consulted."""

    id: str
    title: str
    access: Access
    edition: str = ""
    year: int | None = None
    licence: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Bone:
    """A bone, or a series of like bones taken as one (the ribs)."""

    id: str
    name: str
    order: int
    """Position from proximal to distal over the whole body; ties are neighbours."""
    region: str
    plural: bool = False
    latin: str = ""
    synonyms: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Landmark:
    """A place where a muscle may attach: on one bone, or soft tissue spanning `bones`."""

    id: str
    name: str
    bones: tuple[str, ...]
    label: str
    """Unambiguous text for an option or a line, such as "coracoid process of the scapula"."""
    kind: str
    tissue: Tissue = "bone"
    position: Position = ""
    within: tuple[str, ...] = ()
    """Larger landmarks that this one is a part of: naming the whole is then not false."""
    homologues: tuple[str, ...] = ()
    latin: str = ""
    synonyms: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Joint:
    """A joint or a set of like joints that move alike.

    `bones` are all that articulate; `links` are the pairs along which motion is passed on,
    from which the joints that a muscle crosses are computed.
    """

    id: str
    name: str
    bones: tuple[str, ...]
    links: tuple[tuple[str, str], ...]
    movements: tuple[str, ...]
    order: int
    plural: bool = False
    synonyms: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Movement:
    """A movement word with its opposite."""

    id: str
    name: str
    verb: str
    """Third person: "flexes"."""
    antagonist: str
    meaning: str
    synonyms: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Nerve:
    """A node of the nerve tree; roots have no parents, a nerve of several cords has several."""

    id: str
    name: str
    kind: NerveKind
    parents: tuple[str, ...] = ()
    roots: tuple[str, ...] = ()
    synonyms: tuple[str, ...] = ()
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Level:
    """A place at which a nerve is typically injured.

    `spares` are the branches, and the muscles (or `muscle/part`), whose fibers leave the nerve before it.
    """

    id: str
    nerve: str
    name: str
    """Where, to stand after the nerve: "at the wrist"."""
    order: int
    """From proximal to distal along one nerve; what a level spares, the more distal ones spare too."""
    sources: tuple[str, ...]
    spares: tuple[str, ...] = ()
    doubts: tuple[str, ...] = ()
    """What the level takes away by the standard account, though some books and dissections spare it."""
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Artery:
    """A node of the artery tree."""

    id: str
    name: str
    parent: str = ""
    synonyms: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Region:
    """A region of the body, in the order in which a course takes them."""

    id: str
    name: str
    order: int
    arteries: tuple[str, ...] = ()
    """The trunks that reach it: every artery of its muscles is one, comes from one or leads to one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Compartment:
    """A compartment or muscle group of a region."""

    id: str
    name: str
    region: str
    synonyms: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class LookAlike:
    """Terms that students mix up, and how to tell them apart."""

    id: str
    kind: TermKind
    members: tuple[str, ...]
    tell: str
    sources: tuple[str, ...]
    also: tuple[str, ...] = ()
    """Confusable words that are not in the knowledge base, for reading only."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Name:
    """Another name of a muscle. One that is not `exact` is never accepted alone."""

    term: str
    kind: NameKind
    exact: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """A head or part that courses may examine by itself."""

    id: str
    name: str
    latin: str = ""
    synonyms: tuple[str, ...] = ()
    """Other names with which the part is named whole: "upper trapezius", "cricopharyngeus"."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Attachment:
    """An origin or insertion of the muscle, or of one part of it."""

    site: str
    sources: tuple[str, ...]
    part: str = ""
    detail: str = ""
    status: Status = "core"


@dataclass(frozen=True, slots=True, kw_only=True)
class Action:
    """What the muscle (or part) does at a joint it crosses."""

    joint: str
    movement: str
    role: Role
    sources: tuple[str, ...]
    part: str = ""
    condition: str = ""
    status: Status = "core"


@dataclass(frozen=True, slots=True, kw_only=True)
class Supply:
    """Motor nerve with the spinal segments that reach this muscle; `main` are the chief ones."""

    nerve: str
    roots: tuple[str, ...]
    sources: tuple[str, ...]
    main: tuple[str, ...] = ()
    part: str = ""
    branch: str = ""
    status: Status = "core"


@dataclass(frozen=True, slots=True, kw_only=True)
class Blood:
    """An artery that supplies the muscle; books list several, none is "the" artery."""

    artery: str
    sources: tuple[str, ...]
    part: str = ""
    branch: str = ""
    status: Status = "core"


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """A remark for the record; a clinical one is shown with the caution."""

    text: str
    kind: NoteKind
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Difference:
    """A point on which books differ: what is contested and who says what."""

    about: str
    text: str
    sources: tuple[str, ...]
    segments: tuple[str, ...] = ()
    """About roots: the segments that others give, where that decides whether a trunk or root takes it all."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Ids:
    """Cross-references to open ontologies."""

    fma: str = ""
    uberon: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Muscle:
    """One muscle, complete. `sources` cover name, Latin, meaning, compartment and layer."""

    id: str
    name: str
    latin: str
    meaning: str
    region: str
    compartment: str
    layer: str
    sources: tuple[str, ...]
    origins: tuple[Attachment, ...]
    insertions: tuple[Attachment, ...]
    actions: tuple[Action, ...]
    nerves: tuple[Supply, ...]
    arteries: tuple[Blood, ...]
    parts: tuple[Part, ...] = ()
    names: tuple[Name, ...] = ()
    notes: tuple[Note, ...] = ()
    differ: tuple[Difference, ...] = ()
    ids: Ids = Ids()


@dataclass(frozen=True, slots=True, kw_only=True)
class Exempt:
    """A listed exception to a content rule; it must still fail, else it is an error itself."""

    rule: str
    subject: str
    reason: str
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class HouseRule:
    """A course's own ruling on a contested fact: `key` is the fact id that counts."""

    fact: str
    ruling: Literal["key", "accept", "bar"]
    note: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Course:
    """A course list: what is examined, in which words, by which rulings."""

    id: str
    title: str
    muscles: tuple[str, ...]
    families: tuple[str, ...]
    description: str = ""
    separate_parts: tuple[str, ...] = ()
    """Muscles whose heads are asked as separate entries."""
    preferred: tuple[tuple[str, str], ...] = ()
    """(concept id, term to show)."""
    abbreviations: tuple[str, ...] = ()
    spelling: Literal["exact", "half", "accept"] = "accept"
    specificity: Literal["exact", "half", "accept"] = "exact"
    """What a typed answer is worth that names the whole for the part: nothing, half, all."""
    attachment_words: Literal["origin and insertion", "proximal and distal"] = "origin and insertion"
    house_rules: tuple[HouseRule, ...] = ()
