"""Items as text for people and as plain values for machines."""

from dataclasses import asdict, replace
from typing import Any

from quizroom.questions.difficulty import band_of
from quizroom.questions.model import Item

_WIDTH = 2


def item_as_text(item: Item, *, reasons: bool = True) -> str:
    """One item as it might stand on paper, with key, reasons, sources and time.

    The key is starred; each wrong option says which source it was drawn from.
    """
    heading = f"{item.family} / {item.direction} / {item.format} / {item.seconds} s"
    if item.difficulty is not None:
        heading += f" / {band_of(item.difficulty)} ({item.difficulty:.2f}, predicted)"
    lines = [heading, item.stem]
    lines += [
        f"{' ' * _WIDTH}{letter} <- {stem.text}" for letter, stem in zip(item.key, item.stems, strict=False)
    ]
    if item.format == "ordering":
        lines.append(f"{' ' * _WIDTH}in order: {', '.join(item.key)}")
    for option in item.options:
        mark = "*" if option.letter in item.key else " "
        lines.append(f"{' ' * _WIDTH}{mark}{option.letter}  {option.text}")
        if reasons:
            lines.append(f"{' ' * 8}[{option.source}] {option.reason.text}")
    lines += [f"{' ' * _WIDTH}= {one.text}: {'; '.join(one.terms)}" for one in item.accepted]
    if reasons:
        lines += [f"{' ' * _WIDTH}near: {one.term} -> {one.tells}" for one in item.near]
        lines.append(f"{' ' * _WIDTH}why: {item.why.text}")
        sources = ", ".join(item.why.sources) or "no source"
        lines.append(f"{' ' * _WIDTH}facts: {', '.join(item.facts)} ({sources})")
    return "\n".join(lines) + "\n"


def item_as_json(item: Item) -> dict[str, Any]:
    """All of an item but the records, which are found by the ids in `muscles`."""
    plain = asdict(replace(item, records=()))
    del plain["records"]
    return plain
