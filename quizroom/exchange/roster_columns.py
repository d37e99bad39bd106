"""Which columns of a roster hold what, by the words of its header."""

from collections.abc import Sequence
from dataclasses import dataclass

WORDS: dict[str, tuple[str, ...]] = {
    "id": (
        "id",
        "institutional id",
        "student id",
        "id number",
        "student number",
        "number",
        "matriculation number",
    ),
    "name": ("name", "full name", "student name", "student"),
    "given name": ("given name", "given names", "first name", "first names", "forename"),
    "family name": ("family name", "last name", "surname"),
    "section": ("section", "lab section", "lab", "group", "class"),
}
"""What a column may be called; case, hyphens, dots and underscores do not matter."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Columns:
    """Places of the columns, from 0; `name` may be two that are joined, `width` is the number of cells."""

    id: int
    name: tuple[int, ...]
    section: int | None
    width: int
    ignored: tuple[str, ...]


def find_columns(header: Sequence[str]) -> Columns | str:
    """The columns of a header in any order, or a sentence that says what it lacks."""
    found: dict[str, int] = {}
    ignored: list[str] = []
    for place, title in enumerate(header):
        meaning = _meaning(title)
        if meaning in found:
            return (
                f'Line 1: "{header[found[meaning]]}" and "{title}" both hold the {meaning}. Keep one of them.'
            )
        if meaning:
            found[meaning] = place
        elif title:
            ignored.append(title)
    name = _name_columns(found)
    if "id" not in found or not name:
        return _lacking("id" if "id" not in found else "name", header)
    unused = (
        header[found[word]] for word in ("given name", "family name") if found.get(word) not in (None, *name)
    )
    return Columns(
        id=found["id"],
        name=name,
        section=found.get("section"),
        width=len(header),
        ignored=(*ignored, *unused),
    )


def _name_columns(found: dict[str, int]) -> tuple[int, ...]:
    if "name" in found:
        return (found["name"],)
    return tuple(found[word] for word in ("given name", "family name") if word in found)


def _meaning(title: str) -> str:
    plain = " ".join(title.casefold().translate(dict.fromkeys(map(ord, "-_.#"), " ")).split())
    return next((meaning for meaning, words in WORDS.items() if plain in words), "")


def _lacking(what: str, header: Sequence[str]) -> str:
    there = ", ".join(f'"{title}"' for title in header[:12] if title) or "nothing"
    return (
        f'Line 1 must name the columns, and none is called "{what}". It holds {there}. '
        'Write "id", "name" and, if you like, "section" above the columns, in any order.'
    )
