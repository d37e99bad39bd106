"""The item families: each file says what can be asked of a syllabus in its family."""

from collections.abc import Callable, Iterator, Mapping
from types import MappingProxyType

from quizroom.questions.ask import Ask
from quizroom.questions.families.action import action_asks
from quizroom.questions.families.artery import artery_asks
from quizroom.questions.families.insertion import insertion_asks
from quizroom.questions.families.joint import joint_asks
from quizroom.questions.families.look_alike import look_alike_asks
from quizroom.questions.families.matching import matching_asks
from quizroom.questions.families.nerve import nerve_asks
from quizroom.questions.families.ordering import ordering_asks
from quizroom.questions.families.origin import origin_asks
from quizroom.questions.families.prime_mover import prime_mover_asks
from quizroom.questions.families.set import set_asks
from quizroom.questions.model import Family
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
        "ordering": ordering_asks,
        "matching": matching_asks,
    }
)
"""What can be asked, by family."""
