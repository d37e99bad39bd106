"""`quizroom retention`."""

from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import click

from quizroom.cli.backup import outdated


@click.command()
@click.option("--data", type=click.Path(path_type=Path, file_okay=False), help="Data folder of the server.")
@click.option("--dry-run", is_flag=True, help="Say what would be erased, and erase nothing.")
@click.option(
    "--backups",
    type=click.Path(path_type=Path, exists=True, file_okay=False),
    help="Folder in which to remove backups too that are older than reviews are kept.",
)
def retention(dry_run: bool, backups: Path | None, **given: Any) -> None:  # noqa: FBT001 - a flag of the command line
    """Erase reviews, players, rosters and unused pictures kept long enough; a server does so by itself."""
    from quizroom.assembly import keeping_of  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.cli.places import clear_ends, settings_of  # noqa: PLC0415 - likewise
    from quizroom.storage.database import open_database  # noqa: PLC0415 - likewise
    from quizroom.storage.system_clock import SystemClock  # noqa: PLC0415 - likewise

    settings = settings_of(given, make_data_folder=True)
    keeping = keeping_of(settings)
    with clear_ends(settings):
        engine = open_database(settings.database_url)
        try:
            forgetting = _forgetting(engine)
            due = forgetting.due(keeping, SystemClock().now())
            click.echo(_said(due, dry_run=dry_run))
            if not dry_run:
                forgetting.carry_out(due)
            # After the reviews: what only these showed goes with them.
            click.echo(_pictures_said(_swept(engine, dry_run=dry_run), dry_run=dry_run))
            if not dry_run and not forgetting.wipe_if_due():
                click.echo("The database is in use: run this again, to take the erased out of its files.")
        finally:
            engine.dispose()
    if backups is not None and keeping.reviews_days:
        _remove_backups(backups, days=keeping.reviews_days, dry_run=dry_run)


def _remove_backups(folder: Path, *, days: int, dry_run: bool) -> None:
    for old in outdated(folder, datetime.now(UTC) - timedelta(days=days)):
        if not dry_run:
            old.unlink()
        click.echo(f"{old}: {'would be ' if dry_run else ''}removed, older than {days} days")


def _forgetting(engine: Any) -> Any:
    from quizroom.service.forgetting import Forgetting  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.service.rooms import Rooms  # noqa: PLC0415 - likewise
    from quizroom.storage.event_log import SqlEventLog  # noqa: PLC0415 - likewise
    from quizroom.storage.kept_reviews import SqlReviews  # noqa: PLC0415 - likewise
    from quizroom.storage.players import SqlPlayers  # noqa: PLC0415 - likewise
    from quizroom.storage.rosters import SqlRosters  # noqa: PLC0415 - likewise
    from quizroom.storage.system_clock import SystemClock  # noqa: PLC0415 - likewise
    from quizroom.storage.wiping import SqlWiping  # noqa: PLC0415 - likewise

    return Forgetting(
        players=SqlPlayers(engine),
        reviews=SqlReviews(engine),
        rosters=SqlRosters(engine),
        rooms=Rooms(log=SqlEventLog(engine), clock=SystemClock(), on_change=lambda _: None, shared=True),
        wiping=SqlWiping(engine),
    )


def _swept(engine: Any, *, dry_run: bool) -> int:
    from quizroom.service.pictures import UNUSED_FOR  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.storage.pictures import SqlPictures  # noqa: PLC0415 - likewise
    from quizroom.storage.system_clock import SystemClock  # noqa: PLC0415 - likewise

    store, before = SqlPictures(engine), SystemClock().now() - UNUSED_FOR
    return store.unused(before) if dry_run else store.sweep(before)


def _pictures_said(count: int, *, dry_run: bool) -> str:
    return f"{'Would erase' if dry_run else 'Erased'} {_counted(count, 'picture')} in no item and no review."


def _said(due: Any, *, dry_run: bool) -> str:
    would = "Would erase" if dry_run else "Erasing"
    counts = (
        _counted(len(due.reviews), "review"),
        _counted(len(due.players), "player"),
        _counted(len(due.rosters), "roster"),
    )
    return f"{would} {counts[0]}, {counts[1]} and {counts[2]}."


def _counted(count: int, thing: str) -> str:
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"
