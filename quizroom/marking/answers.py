"""What one answer is worth."""

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import combinations
from types import MappingProxyType

from quizroom.knowledge.terms import normalise
from quizroom.questions.model import Item
from quizroom.questions.typed import Verdict, verdict
from quizroom.room.state import Answer

NO_RULINGS: Mapping[str, bool] = MappingProxyType({})
ACCEPTED_BY_HOST = "Your host accepts this answer."
REFUSED_BY_HOST = "Your host does not accept this answer."
HALF = 0.5
"""Mark of a term that is right but misspelt, where the course list says so."""


def judge(item: Item, text: str, rulings: Mapping[str, bool] = NO_RULINGS) -> Verdict:
    """The verdict on typed words; where the host has ruled on them, that ruling."""
    found = verdict(item, text)
    accepted = rulings.get(normalise(text))
    if accepted is None:
        return found
    if not accepted:
        return replace(found, kind="wrong", because=REFUSED_BY_HOST)
    return Verdict(kind="right", concept=_meant(item, found, text), because=ACCEPTED_BY_HOST)


def _meant(item: Item, found: Verdict, text: str) -> str:
    """What an accepted answer counts as; in a set, words for none of its members count by themselves."""
    if found.concept in {one.concept for one in item.accepted}:
        return found.concept
    return item.accepted[0].concept if item.pick == 1 else f"accepted {normalise(text)}"


def mark_of(item: Item, answer: Answer | None, rulings: Mapping[str, bool] = NO_RULINGS) -> float:
    """The mark of an answer, 0 to 1.

    One best answer: 1 or 0, and any of several if the host keyed more. Sets: max(0, (hits - wrong) / N).
    Orderings: max(0, Kendall's tau). Matchings: the share of rows that are right.
    """
    if answer is None:
        return 0.0
    if item.format == "one_best":
        return 1.0 if answer.choice and set(answer.choice) <= set(item.key) else 0.0
    if item.format == "ordering":
        return mark_of_order(item.key, answer.choice)
    if item.format == "matching":
        return sum(rows_right(item, answer)) / len(item.key)
    if item.format == "pick_n":
        hits = len(set(answer.choice) & set(item.key))
        return share_of_set(hits=hits, wrong=len(answer.choice) - hits, size=item.pick)
    return mark_of_words(item, {text: judge(item, text, rulings) for text in answer.typed})


def mark_of_order(right: Sequence[str], given: Sequence[str]) -> float:
    """Kendall's tau between two orders of the same things, but not less than 0.

    Tau is the pairs in the right order less those turned round, over all pairs (Kendall 1938, from memory);
    one pair of neighbours exchanged among four -> 2/3.
    """
    place = {letter: number for number, letter in enumerate(right)}
    pairs = list(combinations((place[letter] for letter in given), 2))
    turned_round = sum(one > other for one, other in pairs)
    return max(0.0, (len(pairs) - 2 * turned_round) / len(pairs))


def rows_right(item: Item, answer: Answer) -> tuple[bool, ...]:
    """For each place of an ordering or row of a matching, whether its letter is the right one."""
    return tuple(given == key for given, key in zip(answer.choice, item.key, strict=True))


def mark_of_words(item: Item, said: Mapping[str, Verdict]) -> float:
    """The mark of judged words. Names of the same thing count once; a doubtful one counts nothing yet."""
    best: dict[str, float] = {}
    wrong: set[str] = set()
    for text, found in said.items():
        worth = worth_of(found)
        if worth > 0:
            best[found.concept] = max(worth, best.get(found.concept, 0.0))
        elif found.kind == "wrong":
            wrong.add(found.concept or normalise(text))
    return share_of_set(hits=sum(best.values()), wrong=len(wrong - best.keys()), size=item.pick)


def worth_of(found: Verdict) -> float:
    """What one typed term is worth."""
    match found.kind:
        case "right":
            return 1.0
        case "half":
            return HALF
        case _:
            return 0.0


def share_of_set(*, hits: float, wrong: int, size: int) -> float:
    """Partial credit of a set of `size`: wrong picks cancel right ones, never below 0.

    Common practice, no source; 3 of 3 -> 1, 2 + 1 wrong -> 1/3.
    """
    return max(0.0, (hits - wrong) / size)
