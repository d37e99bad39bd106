"""The nearest known words, for findings and refusals."""

from collections.abc import Iterable
from difflib import SequenceMatcher, get_close_matches

_FEWEST_SHARED = 0.6
_NEARLY_AS_NEAR = 0.08
"""How much less alike than the nearest word another may be and still be named with it."""


def suggest(word: str, known: Iterable[str]) -> str:
    """A remedy that names the nearest known words, three at most, or says that there is none near."""
    near = get_close_matches(word, list(known), n=3, cutoff=_FEWEST_SHARED)
    if not near:
        return "nothing known comes near: check the spelling or add it"
    enough = _likeness(word, near[0]) - _NEARLY_AS_NEAR
    return f"did you mean {' or '.join(_quoted(one) for one in near if _likeness(word, one) >= enough)}?"


def _likeness(word: str, other: str) -> float:
    return SequenceMatcher(None, other, word).ratio()


def _quoted(word: str) -> str:
    return f'"{word}"'
