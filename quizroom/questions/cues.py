"""Cues that give a key away to those who know nothing: a shared stem, the longest option."""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

_STEM_LETTERS = 5
_TOLERANCE = 0.25
"""How far from the mean length of the options a key may be (a suggestion of the trade, no source)."""
_SHORT_ROOTS = ("flex",)
"""Roots of fewer letters that give as much away: flexor, flexion."""
_EVERYDAY = frozenset(
    (
        *("anterior", "posterior", "superior", "inferior", "medial", "lateral", "upper", "lower", "middle"),
        *(
            "proximal",
            "distal",
            "proximally",
            "distally",
            "superficial",
            "which",
            "these",
            "muscle",
            "muscles",
        ),
        *("nerve", "nerves", "artery", "arteries", "joint", "joints", "movement", "movements", "action"),
        *("process", "tubercle", "tuberosity", "border", "surface", "fossa", "first", "second", "third"),
        *("branch", "branches", "origin", "insertion", "attachment", "originates", "inserts", "attaches"),
        *("supplies", "supply", "produce", "produces", "prime", "mover", "finger", "fingers", "thumb"),
        *("articulation", "spinous", "processes", "transverse", "three", "seven", "eight", "compartment"),
    )
)
"""Words that stand in so many names that sharing them tells nothing."""


@dataclass(frozen=True, slots=True)
class Stems:
    """What may echo in another text: the `starts` of words, and all `runs` of letters in words."""

    starts: frozenset[str]
    runs: frozenset[str]


def stems_of(text: str) -> Stems:
    """The stems of a text: the first letters of its telling words, and all runs of letters within them."""
    words = [word for word in re.findall(r"[^\W\d_]+", text.lower()) if word not in _EVERYDAY]
    long_words = [word for word in words if len(word) >= _STEM_LETTERS]
    roots = frozenset(root for root in _SHORT_ROOTS for word in words if word.startswith(root))
    runs = (word[i : i + _STEM_LETTERS] for word in long_words for i in range(len(word) - _STEM_LETTERS + 1))
    return Stems(roots | {word[:_STEM_LETTERS] for word in long_words}, roots | frozenset(runs))


def clangs(stem: Stems, option: Stems) -> bool:
    """Whether an option echoes the question, as the radial nerve echoes brachioradialis.

    A word of one must begin with letters that stand anywhere in a word of the other.
    """
    return not (stem.starts.isdisjoint(option.runs) and option.starts.isdisjoint(stem.runs))


def stands_out_in_length(key: str, others: Iterable[str]) -> bool:
    """Whether the key alone is the longest option, or by more than a quarter longer than their mean."""
    return stands_out(len(key), [len(other) for other in others])


def is_short_beside(key: str, others: Iterable[str]) -> bool:
    """Whether the key is by more than a quarter shorter than the mean of the options."""
    return _is_short(len(key), [len(other) for other in others])


def stands_out(key: int, others: Sequence[int]) -> bool:
    """The same as `stands_out_in_length` for the numbers of letters."""
    return key > max(others) or key > (1 + _TOLERANCE) * _mean(key, others)


def is_uneven_beside(key: int, others: Sequence[int]) -> bool:
    """Whether a key of so many letters stands out, or is short, beside options of so many."""
    return stands_out(key, others) or _is_short(key, others)


def _is_short(key: int, others: Sequence[int]) -> bool:
    return key < (1 - _TOLERANCE) * _mean(key, others)


def _mean(key: int, others: Sequence[int]) -> float:
    return (key + sum(others)) / (1 + len(others))
