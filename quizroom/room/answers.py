"""Whether a choice fits its item. Says nothing about right or wrong."""

from quizroom.questions.model import TYPED_FORMATS, Item
from quizroom.room.refusals import Refused
from quizroom.room.state import Answer, Certainty

LONGEST_WORDS = 80
"""Characters of one typed answer; no term of anatomy that a course examines is longer."""

Said = tuple[tuple[str, ...], tuple[str, ...]]
"""Letters chosen and words typed."""

IN_PLACES = ("ordering", "matching")
"""Formats in which it matters at which place a letter stands."""


def canonical(item: Item, choice: tuple[str, ...], typed: tuple[str, ...]) -> Said:
    """The one form of an answer: letters sorted and single, words with single spaces.

    So the same choice in another order is the same answer, unless the item asks for an order or for rows.
    """
    words = tuple(" ".join(text.split()) for text in typed if text.strip()) if typed else ()
    if item.format in IN_PLACES:
        return choice if any(choice) else (), words
    return tuple(sorted(set(choice))), words


def is_known(known: Answer | None, said: Said, certainty: Certainty | None = None) -> bool:
    """Whether just this has been handed in before."""
    return known is not None and (known.choice, known.typed, known.certainty) == (*said, certainty)


def refuse_misfit(item: Item, said: Said) -> None:
    """Let a canonical answer pass if it fits the item's format.

    Raises:
        Refused: `empty_answer`, or `bad_choice`.
    """
    letters, words = said
    by_letters = item.format not in TYPED_FORMATS
    if not (letters if by_letters else words):
        raise Refused("empty_answer")
    if not (_letters_fit(item, said) if by_letters else _words_fit(item, said)):
        raise Refused("bad_choice")


def _letters_fit(item: Item, said: Said) -> bool:
    letters, words = said
    known = {option.letter for option in item.options}
    if words:
        return False
    match item.format:
        case "ordering":
            return len(letters) == len(known) and set(letters) == known
        case "matching":
            return len(letters) == len(item.stems) and set(letters) <= known | {""}
        case _:
            return len(letters) <= item.pick and set(letters) <= known


def _words_fit(item: Item, said: Said) -> bool:
    letters, words = said
    return not letters and len(words) <= item.pick and all(len(text) <= LONGEST_WORDS for text in words)
