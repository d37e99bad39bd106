"""Which handles are kept off the wall: what a published word list finds rude, however it is spaced."""

import unicodedata
from collections.abc import Iterable
from functools import cache
from itertools import product
from typing import Any

WORDS_OF_THE_TRADE = frozenset({"facial", "loin", "oral", "organ", "pubic", "pubis", "rectus"})
"""Rude by the list, yet on every muscle list; a class of anatomy calls itself Rectus Femoris."""


class ByBeginning:
    """The library's list of words, for its question whether a word is among them.

    The list compares a word with each of its thousand entries, which costs a class that enters together
    seconds; here only entries that may be written with its first two letters, and as long, are compared.
    """

    def __init__(self, words: Iterable[Any]) -> None:
        """Sort the entries by how they may begin and how long they may be."""
        self._words: dict[tuple[str, int], list[Any]] = {}
        for word in words:
            # The library offers no other way to learn how a word may be written.
            letters = word._char_combos[:2]  # noqa: SLF001 - see above
            lengths = range(word._min_len, word._max_len + 1)  # noqa: SLF001 - see above
            for spelling in {("".join(beginning), long) for *beginning, long in product(*letters, lengths)}:
                self._words.setdefault(spelling, []).append(word)

    def __contains__(self, word: str) -> bool:
        return any(word == entry for entry in self._words.get((word[:2], len(word)), ()))

    def __len__(self) -> int:
        return len(self._words)


@cache
def _listed() -> Any:
    """The long list of words, read when the first player comes and not at the start."""
    from better_profanity import Profanity  # noqa: PLC0415 - a server without the filter need not read the list

    listed = Profanity()
    listed.load_censor_words()
    listed.CENSOR_WORDSET = ByBeginning(listed.CENSOR_WORDSET)
    return listed


def reads_rudely(handle: str) -> bool:
    """Whether another handle should be asked for; it errs on the careful side."""
    # A number is a number: read as letters, "455" would keep a player off the wall.
    words = unicodedata.normalize("NFKC", handle).split()
    folded = " ".join(w for w in words if not w.isdecimal() and w.casefold() not in WORDS_OF_THE_TRADE)
    run_together = "".join(character for character in folded if character.isalnum())
    without_figures = "".join(c if c.isalpha() else " " for c in folded)
    # Most handles read alike in all ways.
    readings = {folded, run_together, without_figures}
    return any(_listed().contains_profanity(reading) for reading in readings)
