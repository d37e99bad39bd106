"""`quizroom items`."""

import json
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from quizroom.cli.class_counts import experience_in
from quizroom.cli.unknown import no_such

if TYPE_CHECKING:
    from quizroom.knowledge.catalogue import Catalogue
    from quizroom.knowledge.model import Course
    from quizroom.questions.model import Family, Item


@dataclass(frozen=True, slots=True, kw_only=True)
class _Wanted:
    """What the options asked for; no families means those of the course."""

    course: str
    families: tuple[str, ...]
    seed: int
    rounds: int | None
    report: bool
    output: str
    folder: Path | None
    data: Path | None


@click.command()
@click.option("--course", required=True, help="Id of a course list.")
@click.option("--family", "families", multiple=True, help="Family; may be repeated [default: the course's].")
@click.option("--seed", type=int, default=1, show_default=True, help="The same seed gives the same items.")
@click.option("--rounds", type=click.IntRange(1, 1000), help="Deal so many [default: print all there are].")
@click.option("--report", is_flag=True, help="Say where wrong options come from, and which rules are broken.")
@click.option("--format", "output", type=click.Choice(["text", "jsonl"]), default="text", show_default=True)
@click.option("--content", "folder", type=click.Path(path_type=Path, file_okay=False), help="Content folder.")
@click.option(
    "--data",
    type=click.Path(path_type=Path, file_okay=False),
    help="Data folder of a server: what its classes chose wrongly becomes a wrong option [default: none].",
)
def items(**given: Any) -> None:
    """Print items, with keys and reasons, as text or one JSON object a line."""
    from quizroom.cli.places import catalogue_of  # noqa: PLC0415 - not before `serve` patches
    from quizroom.questions.deck import CannotDeal  # noqa: PLC0415 - likewise
    from quizroom.questions.print import item_as_json, item_as_text  # noqa: PLC0415 - likewise
    from quizroom.questions.report import report_lines, report_of  # noqa: PLC0415 - likewise

    wanted = _Wanted(**given)
    catalogue = catalogue_of(wanted.folder)
    course = catalogue.courses.get(wanted.course)
    if course is None:
        raise no_such("course list", wanted.course, catalogue.courses)
    try:
        if wanted.report:
            click.echo("\n".join(report_lines(report_of(_items(catalogue, course, wanted)))))
            return
        for item in _items(catalogue, course, wanted):
            as_json = wanted.output == "jsonl"
            click.echo(json.dumps(item_as_json(item), ensure_ascii=False) if as_json else item_as_text(item))
    except CannotDeal as reason:
        raise click.ClickException(str(reason)) from reason


def _items(catalogue: "Catalogue", course: "Course", wanted: _Wanted) -> "Iterator[Item]":
    from quizroom.questions.deck import ALL_FORMATS, DealPlan, all_items, deal  # noqa: PLC0415 - not before `serve`

    families, experience = _families(course, wanted.families), experience_in(wanted.data, course.id)
    if wanted.rounds is not None:
        plan = DealPlan(
            families=families,
            rounds=wanted.rounds,
            seed=wanted.seed,
            formats=ALL_FORMATS,
            experience=experience,
        )
        yield from deal(catalogue, course, plan)
        return
    for family in families:
        yield from all_items(catalogue, course, family, wanted.seed, experience)


def _families(course: "Course", asked: tuple[str, ...]) -> "tuple[Family, ...]":
    from quizroom.questions.model import FAMILIES  # noqa: PLC0415 - not before `serve` patches

    for family in asked:
        if family not in FAMILIES:
            raise no_such("family", family, FAMILIES)
    return tuple(family for family in FAMILIES if family in (asked or course.families))
