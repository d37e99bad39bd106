"""The course's words for things."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import Literal

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.course import term_for
from quizroom.knowledge.model import Course, Joint, Muscle, TermKind
from quizroom.knowledge.wording import part_name
from quizroom.questions.grammar import agreeing_with_all, definite, head_of

OptionKind = TermKind | Literal["head", "action", "compartment", "segment", "meaning", "injury"]
"""What the options of an item are; a head is `muscle/part`, an action is `joint.movement`.

A meaning stands under the id of a muscle of that name, an injury under that of its level or trunk.
"""

End = Literal["origin", "insertion"]
ENDS: tuple[End, ...] = ("origin", "insertion")


_NUMBERED = ("first ", "second ", "third ", "fourth ")
_ENGLISH = (
    *("anterior", "posterior", "superior", "inferior", "medial", "lateral", "superficial", "deep"),
    *("external", "internal", "innermost", "middle", "oblique", "transverse", "vertical"),
)
_WITH_ARTICLE = (*_NUMBERED, *(f"{word} " for word in _ENGLISH), "diaphragm")
"""Muscles that are counted, or have an English name, take an article in a sentence; Latin names have none."""
_MOVED = re.compile(r"(?:body of the )?(.+?)(?: (?:over|in|on|against|under) (?:the|its) .+)?")
"""Of what merely moves the part itself, without what it moves against: "tongue" of "tongue in the mouth"."""
_TURN = re.compile(r"(.+?) ((?:to the|from) .+)")
"""A movement with its direction, which stands after the part that moves."""
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


@lru_cache(maxsize=16384)
def concept_text(words: Words, kind: OptionKind, concept: str) -> str:
    """The name of a concept as an option shows it; remembered, as every choice of options asks for many."""
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
        case "segment":
            return concept
        case "meaning":
            return plain_meaning(words.catalogue.muscles[concept])
        case "injury":
            return injury_text(words, concept)
        case _:
            return words.text_of(concept)


def plain_meaning(muscle: Muscle) -> str:
    """The meaning of the name without the words it is made of: "two-headed muscle of the arm".

    Without an article too, since some would have one and others none.
    """
    return muscle.meaning.partition(":")[0].partition(";")[0].strip().removeprefix("the ")


def injury_text(words: Words, injury: str) -> str:
    """What is cut, and where: "axillary nerve at the surgical neck of the humerus"."""
    level = words.catalogue.levels.get(injury)
    if level:
        return f"{words.text_of(level.nerve)} {level.name}"
    is_root = words.catalogue.nerves[injury].kind == "root"
    return f"{words.text_of(injury)} spinal nerve" if is_root else words.text_of(injury)


def bare_unit_text(words: Words, muscle: str, part: str) -> str:
    """A muscle or a part of it without article: "brachialis", "long head of biceps brachii"."""
    name = concept_text(words, "muscle", muscle)
    return f"{part_name(words.catalogue.muscles[muscle], part)} of {with_article(name)}" if part else name


def unit_text(words: Words, muscle: str, part: str) -> str:
    """As it stands in a sentence: "brachialis", "the long head of biceps brachii", "the first lumbrical"."""
    bare = bare_unit_text(words, muscle, part)
    return f"the {bare}" if part else with_article(bare)


def with_article(name: str) -> str:
    """The name of a muscle as it stands in a sentence: "the diaphragm", "the external oblique", "soleus"."""
    return f"the {name}" if name.startswith(_WITH_ARTICLE) else name


def site_text(words: Words, site: str) -> str:
    """A landmark in a sentence: "the coracoid process of the scapula", "ribs 3–5"."""
    return definite(concept_text(words, "landmark", site))


def action_text(words: Words, action: str) -> str:
    """A movement with its place: "flexion at the elbow joint", "elevation of the scapula"."""
    joint, _, movement = action.partition(".")
    return movement_text(concept_text(words, "movement", movement), place_text(words, joint))


def movement_text(movement: str, place: str) -> str:
    """A movement at its place; of a moving part the direction comes last.

    Else "deviation to the opposite side of the tongue" could be a movement towards that side of the tongue.
    """
    turn = _TURN.fullmatch(movement)
    if place.startswith("of ") and turn:
        return f"{turn[1]} {place} {turn[2]}"
    return f"{movement} {place}"


def place_text(words: Words, joint: str) -> str:
    """Where a movement takes place: "at the elbow joint", "of the scapula", "of the vocal folds"."""
    if joint == _SCAPULA_ON_RIBS:
        return "of the scapula"
    name = concept_text(words, "joint", joint)
    if is_true_joint(words.catalogue.joints[joint]):
        return f"at the {name}"
    moved = _MOVED.fullmatch(name)
    return f"of the {moved[1] if moved else name}"


def is_true_joint(joint: Joint) -> bool:
    """Whether bones meet there; what merely moves (vocal folds, an eyelid) is led in the manner of joints."""
    return head_of(joint.name.split(" over ")[0]).rpartition(" ")[2] in _JOINT_WORDS


def end_word(words: Words, end: End) -> str:
    """The course's word for an end: "origin" or "proximal attachment"."""
    return _END_WORDS[end][words.proximal]


def end_verb(words: Words, end: End, texts: list[str]) -> str:
    """The verb of an attachment, agreeing with its subjects: "originates from"."""
    return agreeing_with_all(texts, *_END_VERBS[end][words.proximal])


def there_verb(words: Words, end: End, texts: list[str]) -> str:
    """The same where the place was just named: "originates there"."""
    return agreeing_with_all(texts, *_THERE_VERBS[end][words.proximal])
