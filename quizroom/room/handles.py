"""Handles: the names that players choose for themselves."""

import unicodedata

LONGEST_HANDLE = 40
"""In characters; long enough for most full names, short enough for one line of the wall."""

BLANK = frozenset("\u034f\u115f\u1160\u17b4\u17b5\u3164\uffa0")
"""Letters and marks that show nothing (Unicode, Default_Ignorable_Code_Point; from memory)."""


def tidy_handle(raw: str) -> str:
    """Drop what cannot be seen; then NFC and single spaces."""
    visible = "".join(character for character in raw if _is_visible(character))
    return " ".join(unicodedata.normalize("NFC", visible).split())


def is_good_handle(handle: str) -> bool:
    """True for 1 to 40 characters with at least one letter or digit."""
    return 1 <= len(handle) <= LONGEST_HANDLE and any(c.isalnum() for c in handle)


def same_handle(one: str, other: str) -> bool:
    """Whether two handles could be taken for each other: case and compatibility forms aside."""
    return folded(one) == folded(other)


def folded(handle: str) -> str:
    """The form in which two handles are the same if they could be taken for each other."""
    return unicodedata.normalize("NFKC", handle).casefold()


def _is_visible(character: str) -> bool:
    if character in BLANK or unicodedata.name(character, "").startswith("VARIATION SELECTOR"):
        return False
    # Categories C* hold controls and direction overrides, which could scramble a whole line of the wall.
    return character.isspace() or not unicodedata.category(character).startswith("C")
