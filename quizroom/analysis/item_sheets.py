"""The item sheets of a review: each closed item with its numbers and with what was answered."""

from collections import Counter
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal

from quizroom.analysis.item_numbers import ItemNumbers, item_numbers
from quizroom.analysis.responses import Column, Responses
from quizroom.knowledge.terms import normalise
from quizroom.marking import RoundMarks, rows_right
from quizroom.questions.model import Item
from quizroom.room.answers import IN_PLACES
from quizroom.room.flags import flags_up

MOST_WORDS = 8


@dataclass(frozen=True, slots=True, kw_only=True)
class Typed:
    """Words that were typed, as first written, how often, and what they are worth."""

    text: str
    times: int
    kind: Literal["right", "half", "wrong", "doubtful"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Place:
    """A row of a matching, or a place of an ordering, and how many had it right."""

    text: str
    right: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemSheet:
    """One item of a review, with all that is known of it."""

    round: int
    item: Item
    numbers: ItemNumbers
    typed: tuple[Typed, ...]
    """The most frequent words, of a typed item."""
    places: tuple[Place, ...]
    """Of a matching or an ordering."""
    is_rekeyed: bool
    """Whether the host keyed it otherwise than it was dealt."""
    flags: int
    """How many players flagged it."""


def item_sheets(
    responses: Responses, marked: Sequence[RoundMarks], breathe: Callable[[], None] = lambda: None
) -> tuple[ItemSheet, ...]:
    """A sheet for each column; `marked` are the marks of the same rounds. `breathe` is called in between."""
    ranked, sheets = responses.ranked(), []
    for column, marks in zip(responses.columns, marked, strict=True):
        sheets.append(
            ItemSheet(
                round=column.current.number,
                item=column.current.item,
                numbers=item_numbers(responses, column, ranked),
                typed=_typed(column, marks),
                places=_places(column),
                is_rekeyed=column.current.dealt is not None,
                flags=len(tuple(flags_up(column.current))),
            )
        )
        breathe()
    return tuple(sheets)


def _typed(column: Column, marked: RoundMarks) -> tuple[Typed, ...]:
    first: dict[str, str] = {}
    times: Counter[str] = Counter()
    for player in column.marks:
        for text in column.current.answers[player].typed:
            times[first.setdefault(normalise(text), text)] += 1
    frequent = sorted(times.items(), key=lambda one: (-one[1], one[0]))[:MOST_WORDS]
    return tuple(Typed(text=text, times=count, kind=marked.verdicts[text].kind) for text, count in frequent)


def _places(column: Column) -> tuple[Place, ...]:
    item = column.current.item
    if item.format not in IN_PLACES:
        return ()
    right = [rows_right(item, column.current.answers[player]) for player in column.marks]
    texts = _place_texts(item)
    return tuple(Place(text=text, right=sum(row[at] for row in right)) for at, text in enumerate(texts))


def _place_texts(item: Item) -> list[str]:
    if item.stems:
        return [stem.text for stem in item.stems]
    by_letter = {option.letter: option.text for option in item.options}
    return [by_letter[letter] for letter in item.key]
