"""`quizroom bench`."""

from pathlib import Path
from time import perf_counter
from typing import TYPE_CHECKING

import click

from quizroom.cli.bench_plan import bench_plan
from quizroom.cli.bench_room import bench_room
from quizroom.cli.bench_workers import bench_workers
from quizroom.cli.unknown import no_such
from quizroom.collector import collector_as_on_a_server

if TYPE_CHECKING:
    from quizroom.knowledge.catalogue import Catalogue
    from quizroom.knowledge.model import Course


@click.group(invoke_without_command=True)
@click.pass_context
def bench(context: click.Context) -> None:
    """Measure how fast this machine does the work of quizroom. Without a command: all of it."""
    if context.invoked_subcommand is None:
        for name, command in bench.commands.items():
            click.echo(f"bench {name}: {command.get_short_help_str(100)}")
            context.invoke(command)


bench.add_command(bench_room)
bench.add_command(bench_workers)
bench.add_command(bench_plan)


@bench.command("items")
@click.option("--course", "course_id", help="Id of a course list [default: the one with most muscles].")
@click.option(
    "--rounds", type=click.IntRange(1, 10_000), default=1000, show_default=True, help="Items in a deal."
)
@click.option("--times", type=click.IntRange(1, 100), default=5, show_default=True, help="Deals to measure.")
@click.option("--content", "folder", type=click.Path(path_type=Path, file_okay=False), help="Content folder.")
def bench_items(course_id: str | None, rounds: int, times: int, folder: Path | None) -> None:
    """Deal 1000 items with the whole knowledge base loaded, and print seconds and items a second.

    Beside each deal the content is read once more: how many times as long a deal takes does not hang on
    the machine, nor on what else it does. Python's garbage collector is set as on a running server.
    """
    from quizroom.cli.places import catalogue_of  # noqa: PLC0415 - not before `serve` patches
    from quizroom.questions.deck import ALL_FORMATS, CannotDeal, DealPlan, deal_from, prepare  # noqa: PLC0415 - likewise
    from quizroom.questions.model import FAMILIES  # noqa: PLC0415 - likewise
    from quizroom.questions.syllabus import syllabus_of  # noqa: PLC0415 - likewise

    read = _Watch()
    catalogue = catalogue_of(folder)
    course = _course(catalogue, course_id)
    click.echo(f"{len(catalogue.muscles)} muscles read in {read.seconds():.2f} s")
    prepared = _Watch()
    syllabus = syllabus_of(catalogue, course)
    families = tuple(family for family in FAMILIES if family in course.families)
    asks = prepare(syllabus, families)
    click.echo(f"{course.id}: {asks} questions found in {prepared.seconds():.2f} s, once for each list")
    plans = (
        DealPlan(families=families, rounds=rounds, seed=seed, formats=ALL_FORMATS) for seed in range(times)
    )
    with collector_as_on_a_server():
        for plan in plans:
            watch = _Watch()
            try:
                dealt = len(deal_from(syllabus, plan))
            except CannotDeal as reason:
                raise click.ClickException(str(reason)) from reason
            seconds = watch.seconds()
            beside = _Watch()
            catalogue_of(folder)
            ratio = seconds / beside.seconds()
            click.echo(
                f"{dealt} items dealt in {seconds:.2f} s: {dealt / seconds:.0f} items/s, "
                f"{ratio:.1f} times as long as reading the content beside it"
            )


class _Watch:
    """Runs from when it is made."""

    def __init__(self) -> None:
        self._started = perf_counter()

    def seconds(self) -> float:
        return perf_counter() - self._started


def _course(catalogue: "Catalogue", course_id: str | None) -> "Course":
    if course_id is None:
        return max(catalogue.courses.values(), key=lambda course: (len(course.muscles), course.id))
    if course_id not in catalogue.courses:
        raise no_such("course list", course_id, catalogue.courses)
    return catalogue.courses[course_id]
