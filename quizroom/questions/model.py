"""The values of a dealt item.

An item carries its own reasons, accepted terms and records, so that marking and explaining
it need nothing but the item itself, however the content changes afterwards.
"""

from dataclasses import dataclass
from typing import Literal

from quizroom.knowledge.course import FAMILIES as FAMILIES
from quizroom.knowledge.course import CourseFamily
from quizroom.knowledge.record import Record

Format = Literal["one_best", "pick_n", "typed", "free_list", "ordering", "matching"]
TYPED_FORMATS: tuple[Format, ...] = ("typed", "free_list")
Family = Literal[CourseFamily, "own"]
"""What an item asks for. "own" is a host's own item that belongs to no family of the dealt ones."""
Spelling = Literal["exact", "half", "accept"]
Worth = Literal["none", "half", "full"]
Whose = Literal["course", "all"]
"""Whose answers a number rests on: of classes of this course, or of all."""
DistractorSource = Literal[
    "key",
    "class_error",
    "look_alike",
    "same_compartment",
    "neighbouring_landmark",
    "homologous_bone",
    "sibling_nerve",
    "sibling_artery",
    "antagonist",
    "same_joint",
    "other_joint",
    "serial_homologue",
    "other_level",
    "neighbouring_segment",
    "same_region",
    "own",
]
"""Where a wrong option came from; "own": the host wrote it."""

"""The families that can be dealt."""
LETTERS = "ABCDEFGHIJ"
"""One best answer uses A-E; pick-N sets may need more rows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Reason:
    """Why an option is right or wrong: what the chosen thing really is."""

    text: str
    facts: tuple[str, ...] = ()
    sources: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One lettered option; `source` tells where a distractor came from, "key" for the key."""

    letter: str
    text: str
    concept: str
    reason: Reason
    source: DistractorSource


@dataclass(frozen=True, slots=True, kw_only=True)
class Accepted:
    """A concept that counts in a typed answer, and every exact term for it."""

    concept: str
    text: str
    terms: tuple[str, ...]
    because: str = ""
    """Why it counts, where a host keyed it; "" for what was dealt so."""


@dataclass(frozen=True, slots=True, kw_only=True)
class NearTerm:
    """A term for another concept, close enough in spelling to matter for the verdict."""

    concept: str
    term: str
    tells: str
    """What that other thing is, shown to whoever typed it."""
    worth: Worth = "none"
    """What it counts all the same: the whole where a part was asked for, if the course takes it."""
    facts: tuple[str, ...] = ()
    """The facts that `tells` tells."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stem:
    """One row of a matching item: what it asks about, and why its key is the key."""

    text: str
    concept: str
    reason: Reason


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A picture beside a stem, and its twin in words.

    The server shows it under `name`, which tells nothing of what is on it; width and height are pixels.
    """

    name: str
    alt: str
    """What is to be seen, for whoever does not see it: without it the item could not be answered."""
    width: int
    height: int
    credit: str = ""
    """Who made it, and under which licence it may be shown."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Observed:
    """How often a question was answered in full by classes before, and by whose: of this course or of all."""

    answered: int
    right: int
    whose: Whose


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One question as dealt.

    `key` holds letters: of an ordering all of them in the right order, of a matching one for each of
    the `stems`. It is empty for typed formats.
    """

    id: str
    family: Family
    direction: str
    format: Format
    subject: str
    """Id of the concept that the stem asks about."""
    stem: str
    options: tuple[Option, ...]
    key: tuple[str, ...]
    pick: int
    """How many answers are asked for: 1, N of a set, or one for each place or row."""
    accepted: tuple[Accepted, ...]
    near: tuple[NearTerm, ...]
    spelling: Spelling
    why: Reason
    """Why the key is the key."""
    facts: tuple[str, ...]
    """Ids of the facts asked for."""
    muscles: tuple[str, ...]
    """Muscles whose records hold the key; the first is shown first."""
    records: tuple[Record, ...]
    seconds: int
    """Time for the round, computed from words and format (`timing.py`)."""
    stems: tuple[Stem, ...] = ()
    """The rows of a matching item, which share the options."""
    difficulty: float | None = None
    """Predicted before any class answered it, 0 (easy) to 1 (hard); None in older logs."""
    warm_up: bool = False
    """Whether it was dealt to warm up, on a landmark or a movement word."""
    observed: Observed | None = None
    """What classes did with the same question until it was dealt; None if too few had it."""
    picture: Picture | None = None
    by_host: bool = False
    """Whether the host wrote it; then it rests on no facts of the content, and is asked again as it was."""
