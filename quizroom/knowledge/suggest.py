"""The nearest known word, for findings and refusals."""

from collections.abc import Iterable
from difflib import get_close_matches


def suggest(word: str, known: Iterable[str]) -> str:
    """A remedy that names the nearest known word, or says that there is none near."""
    near = get_close_matches(word, list(known), n=1, cutoff=0.6)
    return f'did you mean "{near[0]}"?' if near else "nothing known comes near: check the spelling or add it"
