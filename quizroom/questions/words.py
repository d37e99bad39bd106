"""The course's words for things, and the little grammar that stems and reasons need.

Sentences are built so that the number of a name hardly matters; where a verb must agree, `agreeing` does it.
"""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Literal

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.course import term_for
from quizroom.knowledge.model import Course, Joint, TermKind
from quizroom.knowledge.wording import listed, part_name

OptionKind = TermKind | Literal["head", "action", "compartment"]
"""What the options of an item are; a head is `muscle/part`, an action is `joint.movement`."""

End = Literal["origin", "insertion"]
ENDS: tuple[End, ...] = ("origin", "insertion")

LONGEST_LIST = 4
"""Things that a sentence names one by one."""

_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_PLURAL_NAMES = frozenset(
    (
        *("fibers", "fibres", "slips", "heads", "parts", "bellies", "halves", "lumbricals", "interossei"),
        *("branches", "arteries", "nerves", "joints", "ribs", "cartilages", "intercostals", "subcostales"),
        *("interspinales", "intertransversarii", "rotatores", "multifidi", "obliques", "gemelli"),
    )
)
_PLURAL_STARTS = (
    "levatores ",
    "rotatores ",
    "interspinales ",
    "intertransversarii ",
    "lumbricals ",
    "interossei ",
)
_BARE_STARTS = ("ribs ", "costal cartilages ")
_SCAPULA_ON_RIBS = "scapulothoracic"
_JOINT_WORDS = frozenset(("joint", "joints", "articulation", "articulations", "symphysis", "syndesmosis"))
_END_WORDS: Mapping[str, tuple[str, str]] = {
    "origin": ("origin", "proximal attachment"),
    "insertion": ("insertion", "distal attachment"),
}
_END_VERBS: Mapping[str, tuple[tuple[str, str], tuple[str, str]]] = {
    "origin": (("originates from", "originate from"), ("attaches proximally to", "attach proximally to")),
    "insertion": (("inserts on", "insert on"), ("attaches distally to", "attach distally to")),
}
_THERE_VERBS: Mapping[str, tuple[tuple[str, str], tuple[str, str]]] = {
    "origin": (
        ("originates there", "originate there"),
        ("attaches there proximally", "attach there proximally"),
    ),
    "insertion": (("inserts there", "insert there"), ("attaches there distally", "attach there distally")),
}


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Words:
    """The words in which a course shows things; `text_of` remembers them."""

    catalogue: Catalogue
    proximal: bool
    text_of: Callable[[str], str]


def words_of(catalogue: Catalogue, course: Course) -> Words:
    """The words of a course."""
    return Words(
        catalogue=catalogue,
        proximal=course.attachment_words == "proximal and distal",
        text_of=cache(lambda concept: term_for(catalogue, course, concept)),
    )


def concept_text(words: Words, kind: OptionKind, concept: str) -> str:
    """The name of a concept as an option shows it."""
    match kind:
        case "action":
            return action_text(words, concept)
        case "movement":
            return words.text_of(concept.rpartition(".")[2])
        case "head":
            muscle, _, part = concept.partition("/")
            return bare_unit_text(words, muscle, part)
        case "compartment":
            return words.catalogue.compartments[concept].name
        case _:
            return words.text_of(concept)


def bare_unit_text(words: Words, muscle: str, part: str) -> str:
    """A muscle or a part of it without article: "brachialis", "long head of biceps brachii"."""
    name = concept_text(words, "muscle", muscle)
    return f"{part_name(words.catalogue.muscles[muscle], part)} of {name}" if part else name


def unit_text(words: Words, muscle: str, part: str) -> str:
    """As it stands in a sentence: "brachialis", "the long head of biceps brachii"."""
    bare = bare_unit_text(words, muscle, part)
    return f"the {bare}" if part else bare


def site_text(words: Words, site: str) -> str:
    """A landmark in a sentence: "the coracoid process of the scapula", "ribs 3–5"."""
    return definite(concept_text(words, "landmark", site))


def action_text(words: Words, action: str) -> str:
    """A movement with its place: "flexion at the elbow joint", "elevation of the scapula"."""
    joint, _, movement = action.partition(".")
    return f"{concept_text(words, 'movement', movement)} {place_text(words, joint)}"


def place_text(words: Words, joint: str) -> str:
    """Where a movement takes place: "at the elbow joint", "of the scapula", "of the vocal folds"."""
    if joint == _SCAPULA_ON_RIBS:
        return "of the scapula"
    name = concept_text(words, "joint", joint)
    return f"at the {name}" if is_true_joint(words.catalogue.joints[joint]) else f"of the {name}"


def is_true_joint(joint: Joint) -> bool:
    """Whether bones meet there; what merely moves (vocal folds, an eyelid) is led in the manner of joints."""
    return _head(joint.name.split(" over ")[0]).rpartition(" ")[2] in _JOINT_WORDS


def end_word(words: Words, end: End) -> str:
    """The course's word for an end: "origin" or "proximal attachment"."""
    return _END_WORDS[end][words.proximal]


def end_verb(words: Words, end: End, texts: list[str]) -> str:
    """The verb of an attachment, agreeing with its subjects: "originates from"."""
    return agreeing_with_all(texts, *_END_VERBS[end][words.proximal])


def there_verb(words: Words, end: End, texts: list[str]) -> str:
    """The same where the place was just named: "originates there"."""
    return agreeing_with_all(texts, *_THERE_VERBS[end][words.proximal])


def agreeing_with_all(texts: list[str], one: str, many: str) -> str:
    """`many` for several subjects or one that is plural itself, else `one`."""
    return many if len(texts) > 1 else agreeing(texts[0], one, many)


def agreeing(text: str, one: str, many: str) -> str:
    """`many` if `text` names several things ("upper fibers of ..."), else `one`."""
    head = _head(text).split(" (", maxsplit=1)[0]
    return many if head.rpartition(" ")[2] in _PLURAL_NAMES or head.startswith(_PLURAL_STARTS) else one


def _head(text: str) -> str:
    return text.split(" of ", maxsplit=1)[0]


def definite(text: str) -> str:
    """With the article, unless numbers take its place: "the clavicle", "ribs 3–5"."""
    return text if text.startswith(_BARE_STARTS) else f"the {text}"


def capitalised(text: str) -> str:
    """With its first letter large, the rest as it is."""
    return text[:1].upper() + text[1:]


def listed_clearly(texts: list[str]) -> str:
    """A list in a sentence, with semicolons where its members have commas or lists of their own."""
    if len(texts) < 2 or not any("," in text or " and " in text for text in texts):
        return listed(texts)
    mark = ";" if len(texts) > 2 or any("," in text for text in texts) else ","
    return f"{f'{mark} '.join(texts[:-1])}{mark} and {texts[-1]}"


def number_word(number: int) -> str:
    """0 to 10 in words; figures beyond."""
    return _NUMBERS[number] if number < len(_NUMBERS) else str(number)


def shortened(texts: list[str], longest: int = LONGEST_LIST) -> list[str]:
    """At most `longest` texts; what is left out is named "others"."""
    return texts if len(texts) <= longest else [*texts[:longest], "others"]
