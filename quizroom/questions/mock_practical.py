"""A mock practical: stations with one prompt each, answered by typing as far as the course list allows."""

from collections.abc import Sequence
from random import Random

from quizroom.questions.dealing import Dealing, next_item, start_dealing, take_note, within_regions
from quizroom.questions.model import Family, Format, Item
from quizroom.questions.sequence import in_order
from quizroom.questions.syllabus import Syllabus


def deal_stations(
    syllabus: Syllabus,
    *,
    families: Sequence[Family],
    regions: Sequence[str],
    stations: int,
    typed: bool,
    seed: int,
) -> tuple[Item, ...]:
    """So many stations, or as many as there can be without asking a fact twice.

    With `typed` every station is typed as long as there is something to name; what cannot be typed, a
    movement for instance, comes with options. Sets, orderings and matchings are no single prompt.
    """
    items: list[Item] = []
    formats: tuple[Format, ...] = ("typed", "one_best") if typed else ("one_best",)
    for format_ in formats:
        dealing = _dealing(syllabus, families, regions, format_, seed)
        for dealt in items:
            take_note(dealing, dealt, shown=True)
        while len(items) < stations and (item := next_item(dealing)) is not None:
            items.append(item)
    random = Random(f"stations/{seed}")  # noqa: S311 -- a deal is to be repeatable, not secret
    return tuple(in_order(syllabus, items, random, interleave=True))


def _dealing(
    syllabus: Syllabus, families: Sequence[Family], regions: Sequence[str], format_: Format, seed: int
) -> Dealing:
    random = Random(f"mock/{seed}/{format_}")  # noqa: S311 -- likewise
    examined = tuple(family for family in families if family in syllabus.course.families)
    dealing = start_dealing(syllabus, examined, (format_,), random, seed)
    return within_regions(dealing, regions)
