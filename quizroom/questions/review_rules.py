"""The trade's rules for a whole review: no fact twice, nothing given away, no habit of the key."""

from collections import Counter
from collections.abc import Iterable, Sequence

from quizroom.questions.model import LETTERS, Item
from quizroom.questions.waiting import gives_away, told_before

_UNLIKELY: tuple[float, ...] = (10.83, 13.82, 16.27, 18.47)
"""Chi-square that chance exceeds once in a thousand, for 1 to 4 degrees of freedom (standard table)."""


def repeated_facts(items: Sequence[Item]) -> tuple[str, ...]:
    """Facts that more than one round asks for."""
    asked = Counter(fact for item in items for fact in dict.fromkeys(item.facts))
    return tuple(fact for fact, times in asked.items() if times > 1)


def given_away(items: Sequence[Item]) -> tuple[int, ...]:
    """Places of the rounds whose key has been read before: in a question, a record or a reason.

    Records and reasons are those told after each round; what would give a later key away waits.
    """
    told = [told_before(item, items[place + 1 :]) for place, item in enumerate(items)]
    return tuple(
        place for place, item in enumerate(items) if any(gives_away(before, item) for before in told[:place])
    )


def kept_waiting(items: Sequence[Item]) -> tuple[int, ...]:
    """Places of the rounds of which a record or a reason is to wait for a later round."""
    return tuple(
        place for place, item in enumerate(items) if told_before(item, items[place + 1 :]) is not item
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
