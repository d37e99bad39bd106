"""What may stay of the words that a player typed who wants to be forgotten."""

from quizroom.knowledge.terms import normalise
from quizroom.questions.typed import verdict
from quizroom.room.state import Round

UNTOLD = "? {}"
"""Stands for words that are no term near the item: nobody knows what they tell of whoever typed them."""


def known_words(words: tuple[str, ...], answered: Round) -> tuple[str, ...]:
    """The words, with a number for each that means nothing here, so that the mark stays what it was.

    Doing it again changes nothing.
    """
    numbers: dict[str, int] = {}
    return tuple(
        text
        if _means_something(text, answered)
        else UNTOLD.format(numbers.setdefault(normalise(text), len(numbers) + 1))
        for text in words
    )


def _means_something(text: str, answered: Round) -> bool:
    if normalise(text) in answered.rulings:
        return True
    # Under either key: it may be restored later.
    verdicts = (verdict(item, text) for item in (answered.item, answered.dealt) if item is not None)
    return any(found.kind != "wrong" or bool(found.concept) for found in verdicts)
