"""Whether a choice fits its item. Says nothing about right or wrong."""

from quizroom.questions.model import Item
from quizroom.room.refusals import Refused

LONGEST_WORDS = 80
"""Characters of one typed answer; no term of anatomy that a course examines is longer."""


def checked_answer(
    item: Item, choice: tuple[str, ...], typed: tuple[str, ...]
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Return the answer in its one canonical form.

    Letters are sorted and single, so that the same choice in another order is the same answer.

    Raises:
        Refused: `empty_answer`, or `bad_choice` when it does not fit the item's format.
    """
    if item.format in ("one_best", "pick_n"):
        return _checked_letters(item, choice, typed), ()
    return (), _checked_words(item, choice, typed)


def _checked_letters(item: Item, choice: tuple[str, ...], typed: tuple[str, ...]) -> tuple[str, ...]:
    letters = tuple(sorted(set(choice)))
    if not letters:
        raise Refused("empty_answer")
    if typed or len(letters) > item.pick or not set(letters) <= {option.letter for option in item.options}:
        raise Refused("bad_choice")
    return letters


def _checked_words(item: Item, choice: tuple[str, ...], typed: tuple[str, ...]) -> tuple[str, ...]:
    words = tuple(" ".join(text.split()) for text in typed if text.strip())
    if not words:
        raise Refused("empty_answer")
    if choice or len(words) > item.pick or any(len(text) > LONGEST_WORDS for text in words):
        raise Refused("bad_choice")
    return words
