"""How difficult an item will be: predicted, and corrected by what classes did with the same question.

The prediction is a rule of thumb (common practice, no source for the weights): names and actions are
taught most, attachments less, nerves least of all (Reynolds, Goodwin & O'Loughlin 2022, Adv Physiol Educ
46:309-318); options that are alike, muscles that few course lists hold and answers without options make an
item harder; a question that echoes its key makes it easier.
"""

from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType
from typing import Literal

from quizroom.questions.cues import clangs
from quizroom.questions.model import DistractorSource, Family, Format, Item, Observed
from quizroom.questions.syllabus import Syllabus

Band = Literal["easy", "middling", "hard"]

_MIDDLING_FROM, _HARD_FROM = 0.45, 0.6
_UNKNOWN = 0.5
_FAMILY: Mapping[Family, float] = MappingProxyType(
    {
        "name": 0.2,
        "action": 0.2,
        "prime_mover": 0.3,
        "compartment": 0.3,
        "joint": 0.4,
        "antagonist": 0.4,
        "origin": 0.6,
        "insertion": 0.6,
        "look_alike": 0.6,
        "nerve": 0.7,
        "odd_one_out": 0.7,
        "set": 0.8,
        "artery": 0.9,
        "root": 0.9,
        "lesion": 1.0,
        "two_step": 1.0,
        "ordering": 0.7,
        "matching": 0.6,
    }
)
_LIKENESS: Mapping[DistractorSource, float] = MappingProxyType(
    {
        "class_error": 1.0,
        "look_alike": 1.0,
        "same_compartment": 0.8,
        "neighbouring_landmark": 0.8,
        "neighbouring_segment": 0.8,
        "sibling_nerve": 0.7,
        "sibling_artery": 0.7,
        "other_level": 0.7,
        "antagonist": 0.6,
        "same_joint": 0.6,
        "homologous_bone": 0.5,
        "serial_homologue": 0.5,
        "other_joint": 0.3,
        "same_region": 0.2,
    }
)
_RECALL: Mapping[Format, float] = MappingProxyType({"typed": 0.8, "free_list": 1.0})
"""Without options: in place of their likeness."""
_ECHO = 0.1
PRIOR_ANSWERS = 10
"""So many answers a prediction is worth against real ones (own choice, to be fitted to own data)."""


def predicted_difficulty(syllabus: Syllabus, item: Item) -> float:
    """From 0 (easy) to 1 (hard)."""
    wrong = [_LIKENESS.get(one.source, _UNKNOWN) for one in item.options if one.source != "key"]
    likeness = sum(wrong) / len(wrong) if wrong else _RECALL.get(item.format, _UNKNOWN)
    taught = 0.4 * _FAMILY.get(item.family, _UNKNOWN) + 0.2 * _rarity(syllabus, item)
    echo = _ECHO if _echoes(syllabus, item) else 0.0
    return max(0.0, min(1.0, 0.4 * likeness + taught - echo))


def expected_difficulty(predicted: float, observed: Observed | None) -> float:
    """The prediction moved towards the share of those who were not right, from 0 to 1.

    (n0 p + w) / (n0 + n): the mean of a beta distribution with the prediction p as prior, worth n0 answers,
    after w of n answers were wrong (beta-binomial model; textbook formula, from memory).
    """
    if observed is None:
        return predicted
    wrong = observed.answered - observed.right
    return (PRIOR_ANSWERS * predicted + wrong) / (PRIOR_ANSWERS + observed.answered)


def band_of(difficulty: float) -> Band:
    """The word for a difficulty."""
    if difficulty >= _HARD_FROM:
        return "hard"
    return "middling" if difficulty >= _MIDDLING_FROM else "easy"


def _rarity(syllabus: Syllabus, item: Item) -> float:
    """Share of the course lists that do without a muscle of the item."""
    lists = _lists(syllabus)
    without = sum(not on_list.issuperset(item.muscles) for on_list in lists)
    return without / len(lists) if lists else _UNKNOWN


@lru_cache(maxsize=8)
def _lists(syllabus: Syllabus) -> tuple[frozenset[str], ...]:
    """The muscles of each course list."""
    return tuple(frozenset(course.muscles) for course in syllabus.catalogue.courses.values())


def _echoes(syllabus: Syllabus, item: Item) -> bool:
    stem = syllabus.stems(item.stem)
    return any(clangs(stem, syllabus.stems(one.text)) for one in item.options if one.source == "key")
