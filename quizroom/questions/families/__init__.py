"""The item families: each file says what can be asked of a syllabus in its family."""

from collections.abc import Callable, Iterator, Mapping
from functools import lru_cache
from types import MappingProxyType

from quizroom.questions.ask import Ask
from quizroom.questions.families.action import action_asks
from quizroom.questions.families.antagonist import antagonist_asks
from quizroom.questions.families.artery import artery_asks
from quizroom.questions.families.compartment import compartment_asks
from quizroom.questions.families.insertion import insertion_asks
from quizroom.questions.families.joint import joint_asks
from quizroom.questions.families.lesion import lesion_asks
from quizroom.questions.families.look_alike import look_alike_asks
from quizroom.questions.families.matching import matching_asks
from quizroom.questions.families.name import name_asks
from quizroom.questions.families.nerve import nerve_asks
from quizroom.questions.families.odd_one_out import odd_one_out_asks
from quizroom.questions.families.ordering import ordering_asks
from quizroom.questions.families.origin import origin_asks
from quizroom.questions.families.prime_mover import prime_mover_asks
from quizroom.questions.families.root import root_asks
from quizroom.questions.families.set import set_asks
from quizroom.questions.families.two_step import two_step_asks
from quizroom.questions.formats import with_true_formats
from quizroom.questions.model import FAMILIES, Family
from quizroom.questions.syllabus import Syllabus

ASKS: Mapping[Family, Callable[[Syllabus], Iterator[Ask]]] = MappingProxyType(
    {
        "origin": origin_asks,
        "insertion": insertion_asks,
        "action": action_asks,
        "prime_mover": prime_mover_asks,
        "joint": joint_asks,
        "nerve": nerve_asks,
        "artery": artery_asks,
        "set": set_asks,
        "look_alike": look_alike_asks,
        "root": root_asks,
        "compartment": compartment_asks,
        "odd_one_out": odd_one_out_asks,
        "antagonist": antagonist_asks,
        "name": name_asks,
        "lesion": lesion_asks,
        "two_step": two_step_asks,
        "ordering": ordering_asks,
        "matching": matching_asks,
    }
)
"""What can be asked, by family."""


@lru_cache(maxsize=8 * len(FAMILIES))
def asks_of(syllabus: Syllabus, family: Family) -> tuple[Ask, ...]:
    """All asks of a family that can be put in some format; remembered, as the syllabus is."""
    asks = (with_true_formats(syllabus, ask) for ask in ASKS[family](syllabus))
    return tuple(ask for ask in asks if ask.formats)
