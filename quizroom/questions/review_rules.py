"""The trade's rules for a whole review: no fact twice, nothing given away, no habit of the key."""

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import accumulate

from quizroom.questions.model import LETTERS, Item

_UNLIKELY: tuple[float, ...] = (10.83, 13.82, 16.27, 18.47)
"""Chi-square that chance exceeds once in a thousand, for 1 to 4 degrees of freedom (standard table)."""


def repeated_facts(items: Sequence[Item]) -> tuple[str, ...]:
    """Facts that more than one round asks for."""
    asked = Counter(fact for item in items for fact in dict.fromkeys(item.facts))
    return tuple(fact for fact, times in asked.items() if times > 1)


def given_away(items: Sequence[Item]) -> tuple[int, ...]:
    """Places of the rounds whose key stands in a record or a reason shown after an earlier round."""
    shown = accumulate((_shown(item) for item in items[:-1]), frozenset.union, initial=frozenset[str]())
    return tuple(
        place
        for place, (item, before) in enumerate(zip(items, shown, strict=True))
        if before & {*item.facts, *item.muscles}
    )


def key_positions(items: Iterable[Item], size: int = 4) -> Counter[str]:
    """How often each letter is the key among items with one key and so many options."""
    return Counter(item.key[0] for item in items if len(item.key) == 1 and len(item.options) == size)


def keys_have_a_habit(items: Iterable[Item], size: int = 4) -> bool:
    """Whether the key stands at some places more often than chance would have it once in a thousand times."""
    counted = key_positions(items, size)
    by_place = [counted[letter] for letter in LETTERS[:size]]
    return any(by_place) and chi_square(by_place) > _UNLIKELY[size - 2]


def chi_square(counts: Iterable[int]) -> float:
    """Pearson's statistic of counts against an even spread."""
    observed = tuple(counts)
    expected = sum(observed) / len(observed)
    return sum((count - expected) ** 2 / expected for count in observed)


def _shown(item: Item) -> frozenset[str]:
    """Muscles whose records are shown once a round is explained, and facts that its reasons tell."""
    told = (fact for option in item.options for fact in option.reason.facts)
    return frozenset((*(record.muscle for record in item.records), *told))
