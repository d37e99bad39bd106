"""`quizroom bench workers`."""

import tempfile
from pathlib import Path

import click


@click.command("workers")
@click.option("--database-url", envvar="QUIZROOM_DATABASE_URL", help="An empty database of a PostgreSQL.")
@click.option("--fanout-url", envvar="QUIZROOM_FANOUT_URL", help="A Redis or Valkey.")
@click.option("--rooms", type=click.IntRange(1, 100), default=10, show_default=True, help="At each worker.")
@click.option("--players", type=click.IntRange(1, 300), default=40, show_default=True, help="In each room.")
@click.option(
    "--repeats", type=click.IntRange(1, 29), default=7, show_default=True, help="Of each, in turns."
)
@click.option(
    "--share",
    type=click.IntRange(5, 100),
    default=25,
    show_default=True,
    help="Per cent of its core that each worker may use; the load and the database need the rest.",
)
def bench_workers(
    *, database_url: str | None, fanout_url: str | None, rooms: int, players: int, repeats: int, share: int
) -> None:
    """Play many rooms on one worker and twice as many on two, and say how much more two carry."""
    from quizroom.measuring.crowd import Stalled  # noqa: PLC0415 - not before `serve` patches
    from quizroom.measuring.workers import GOAL, CannotMeasure, Load, compare  # noqa: PLC0415 - likewise

    if not database_url or not fanout_url:
        click.echo("Not measured: it needs a PostgreSQL and a Redis; give --database-url and --fanout-url.")
        return
    load = Load(rooms=rooms, players=players, repeats=repeats, share=share / 100)
    try:
        with tempfile.TemporaryDirectory(prefix="quizroom-bench-") as folder:
            found = compare(load, database_url=database_url, fanout_url=fanout_url, folder=Path(folder))
    except (CannotMeasure, Stalled) as reason:
        raise click.ClickException(str(reason)) from reason
    for name, pace in (("one worker", found.one), ("two workers", found.two)):
        click.echo(
            f"{name:11}: {pace.rounds_a_second:6.0f} rounds of a player a second "
            f"({pace.answers_a_second:6.0f} answers/s), "
            f"{pace.rounds_a_core_second:6.0f} for each second of a worker's CPU"
        )
    click.echo(
        f"By the clock, each with {share} % of a core, two carry {found.ratio:.2f} times one (goal: {GOAL})."
    )
    click.echo(f"For the CPU that they use, two carry {found.ratio_by_cpu:.2f} times one.")
    if found.ratio < GOAL:
        raise click.ClickException(f"Two workers carry less than {GOAL} times one.")
