"""Which term was taken for which, by letters or typed."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from quizroom.analysis.responses import Column
from quizroom.marking import RoundMarks
from quizroom.questions.model import Item
from quizroom.room.state import Answer


@dataclass(frozen=True, slots=True, kw_only=True)
class Confusion:
    """So many people took a term for another one, of those who were asked."""

    wanted: str
    taken: str
    people: int
    of: int
    rounds: tuple[int, ...]


def confusions_of(columns: Iterable[tuple[Column, RoundMarks]]) -> tuple[Confusion, ...]:
    """All of them, the most frequent first. `of` counts the answers to all items in which it happened."""
    people: Counter[tuple[str, str]] = Counter()
    where: dict[tuple[str, str], list[Column]] = {}
    for column, marked in columns:
        for pair, times in taken_in(column, marked).items():
            people[pair] += times
            where.setdefault(pair, []).append(column)
    found = (
        Confusion(
            wanted=wanted,
            taken=taken,
            people=times,
            of=sum(len(column.marks) for column in where[wanted, taken]),
            rounds=tuple(column.current.number for column in where[wanted, taken]),
        )
        for (wanted, taken), times in people.items()
    )
    return tuple(sorted(found, key=lambda one: (-one.people, one.wanted, one.taken)))


def taken_in(column: Column, marked: RoundMarks) -> Mapping[tuple[str, str], int]:
    """In one item: (what was asked for, what was given for it), and by how many people."""
    item, answers = column.current.item, column.current.answers
    return Counter(pair for player in column.marks for pair in set(_pairs(item, answers[player], marked)))


def _pairs(item: Item, answer: Answer, marked: RoundMarks) -> Iterator[tuple[str, str]]:
    texts = {option.letter: option.text for option in item.options}
    match item.format:
        case "one_best":
            wanted = " or ".join(texts[letter] for letter in item.key)
            yield from ((wanted, texts[given]) for given in answer.choice if given not in item.key)
        case "matching":
            rows = zip(item.key, answer.choice, strict=True)
            yield from ((texts[key], texts[given]) for key, given in rows if given and given != key)
        case "pick_n":
            yield from _only_pair([texts[one] for one in item.key], [texts[one] for one in answer.choice])
        case "typed" | "free_list":
            yield from _typed_pairs(item, answer, marked)
        case "ordering":
            return


def _typed_pairs(item: Item, answer: Answer, marked: RoundMarks) -> Iterator[tuple[str, str]]:
    keys = {one.concept: one.text for one in item.accepted}
    known = keys | {one.concept: one.term for one in item.near}
    verdicts = [marked.verdicts[text] for text in answer.typed]
    given = [one.concept for one in verdicts if one.concept in known and one.kind != "doubtful"]
    if item.pick == 1:
        yield from ((item.accepted[0].text, known[one]) for one in given if one not in keys)
    else:
        yield from _only_pair(list(keys.values()), [known[one] for one in given])


def _only_pair(keys: list[str], given: list[str]) -> Iterator[tuple[str, str]]:
    """Of a set it is certain what was taken for what if one member is missing and one is wrong."""
    missing = [one for one in keys if one not in given]
    wrong = [one for one in given if one not in keys]
    if len(missing) == len(wrong) == 1:
        yield missing[0], wrong[0]
