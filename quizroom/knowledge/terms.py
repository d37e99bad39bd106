"""Typed terms made comparable: case, accents, hyphens, filler words and plurals do not count."""

import re
import unicodedata

_FILLERS = frozenset(("muscle", "muscles", "m", "mm", "musculus", "musculi", "the"))
_IRREGULAR = {
    "arteries": "artery",
    "fossae": "fossa",
    "phalanges": "phalanx",
    "scapulae": "scapula",
    "vertebrae": "vertebra",
}
_NO_PLURAL = ("ss", "us", "is", "ps", "res")
"""Endings of words that end in s without being many: process, radius, brachialis, biceps, teres."""


def normalise(term: str) -> str:
    """The term as it is compared: "M. Biceps-Brachii" and "the biceps brachii muscle" are one."""
    plain = unicodedata.normalize("NFKD", term).casefold()
    plain = "".join(letter for letter in plain if not unicodedata.combining(letter))
    words = re.findall(r"[^\W_]+", re.sub(r"['\u2019]", "", plain))
    kept = [word for word in words if word not in _FILLERS] or words
    return " ".join(_singular(word) for word in kept)


def _singular(word: str) -> str:
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if word.endswith("sses"):
        return word[:-2]
    if len(word) > 3 and word.endswith("s") and not word.endswith(_NO_PLURAL):
        return word[:-1]
    return word
