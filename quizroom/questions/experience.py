"""What classes did with questions before: what they really chose, and how many were right.

Only counts, never who. What rests on few people is left out here already, so that nobody can be
recognised by it, neither in an option nor in a number.
"""

from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from hashlib import blake2s
from types import MappingProxyType

from quizroom.questions.ask import Ask
from quizroom.questions.model import TYPED_FORMATS, Item, Observed, Whose

FEWEST_ANSWERS = 5
"""With fewer answers nothing is said about a question."""
FEWEST_ERRORS = 5
"""So many people must have chosen something wrong before it becomes a wrong option for that reason."""
LEAST_SHARE = 0.05
"""And such a share of those who answered: fewer do not make a functioning wrong option (Tarrant, Ware &
Mohammed 2009, BMC Med Educ 9:40)."""

MeasureKey = tuple[str, bool]
"""The key of an ask, and whether it was answered by typing: recall is another thing than recognition."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AskCount:
    """What one or more classes did with a question. `wrong` counts people by the concept they chose."""

    ask: str
    typed: bool
    answered: int
    right: int
    wrong: Mapping[str, int]


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassExperience:
    """What a deal takes from classes before. The same experience, plan and seed make the same deal."""

    observed: Mapping[MeasureKey, Observed]
    errors: Mapping[str, tuple[str, ...]]
    """By key of the ask: concepts that were taken for its key, the most frequent first."""

    def observed_of(self, item: Item) -> Observed | None:
        """How often the question of an item was answered before; None if by too few."""
        return self.observed.get((ask_key(item), item.format in TYPED_FORMATS)) if self.observed else None

    def with_errors(self, ask: Ask) -> Ask:
        """The ask, told what was taken for its key."""
        errors = self.errors.get(ask_key(ask), ()) if self.errors else ()
        return replace(ask, errors=errors) if errors else ask


NO_EXPERIENCE = ClassExperience(observed=MappingProxyType({}), errors=MappingProxyType({}))


def ask_key(one: Ask | Item) -> str:
    """The same for the same question on every server and course list, whatever its options and format.

    Family, direction, subject, and a digest of the ids of its facts.
    """
    facts = blake2s("+".join(one.facts).encode(), digest_size=8).hexdigest()
    return f"{one.family}:{one.direction}:{one.subject}:{facts}"


def experience_of(course: Iterable[AskCount], everywhere: Iterable[AskCount]) -> ClassExperience:
    """What to deal from, given the counts of the course's own classes, and of all classes with them.

    The course's own difficulty counts where enough answered; its own errors come before those of others.
    """
    own, others = tuple(course), tuple(everywhere)
    errors = _errors(own)
    for ask, concepts in _errors(others).items():
        errors[ask] = tuple(dict.fromkeys((*errors.get(ask, ()), *concepts)))
    measured = {_measure_key(one): _observed(one, "all") for one in others if _is_enough(one)}
    measured |= {_measure_key(one): _observed(one, "course") for one in own if _is_enough(one)}
    return ClassExperience(observed=measured, errors=errors)


def _errors(counts: Iterable[AskCount]) -> dict[str, tuple[str, ...]]:
    """By ask, what enough people chose, typed or by letter."""
    answered: Counter[str] = Counter()
    wrong: dict[str, Counter[str]] = {}
    for one in counts:
        answered[one.ask] += one.answered
        wrong.setdefault(one.ask, Counter()).update(one.wrong)
    frequent = {
        ask: tuple(
            concept
            for concept, people in sorted(chosen.items(), key=lambda each: (-each[1], each[0]))
            if people >= max(FEWEST_ERRORS, LEAST_SHARE * answered[ask])
        )
        for ask, chosen in wrong.items()
    }
    return {ask: concepts for ask, concepts in frequent.items() if concepts}


def _measure_key(one: AskCount) -> MeasureKey:
    return one.ask, one.typed


def _is_enough(one: AskCount) -> bool:
    return one.answered >= FEWEST_ANSWERS


def _observed(one: AskCount, whose: Whose) -> Observed:
    return Observed(answered=one.answered, right=one.right, whose=whose)
