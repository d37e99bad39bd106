"""Handles: the names that players choose for themselves."""

import unicodedata

LONGEST_HANDLE = 40
"""In characters; long enough for most full names, short enough for one line of the wall."""


def tidy_handle(raw: str) -> str:
    """Normalise to NFC and single spaces; invisible characters are dropped."""
    visible = "".join(c for c in unicodedata.normalize("NFC", raw) if _is_visible(c))
    return " ".join(visible.split())


def is_good_handle(handle: str) -> bool:
    """True for 1 to 40 characters with at least one letter or digit."""
    return 1 <= len(handle) <= LONGEST_HANDLE and any(c.isalnum() for c in handle)


def same_handle(one: str, other: str) -> bool:
    """Whether two handles could be taken for each other: case and compatibility forms aside."""
    return _folded(one) == _folded(other)


def _folded(handle: str) -> str:
    return unicodedata.normalize("NFKC", handle).casefold()


def _is_visible(character: str) -> bool:
    # Categories C* hold controls and direction overrides, which could scramble a whole line of the wall.
    return character.isspace() or not unicodedata.category(character).startswith("C")
