"""`quizroom backup` and `quizroom restore`."""

import os
import re
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import click

NAME = "quizroom-{at:%Y%m%dT%H%M%SZ}.backup.gz"
NAMED = re.compile(r"quizroom-(\d{8}T\d{6}Z)\.backup\.gz")


@click.command()
@click.argument("to", type=click.Path(path_type=Path))
@click.option("--data", type=click.Path(path_type=Path, file_okay=False), help="Data folder of the server.")
@click.option(
    "--keep-days", type=click.IntRange(min=1), help="Remove backups in the folder that are older than this."
)
def backup(to: Path, keep_days: int | None, **given: Any) -> None:
    """Write all that is stored to a file, or to a new file in a folder; the server may be running."""
    from quizroom.cli.places import clear_ends, settings_of  # noqa: PLC0415 - `serve` must not load this first

    settings = settings_of(given)
    now = datetime.now(UTC)
    if keep_days is not None and not to.is_dir():
        raise click.ClickException(
            f"{to} is no folder: make it first. --keep-days removes older backups in it."
        )
    target = to / NAME.format(at=now) if to.is_dir() else to
    with clear_ends(settings):
        rows = _write(settings.database_url, target, now)
    click.echo(f"{target}: {sum(rows.values())} rows ({_counts(rows)})")
    if keep_days is not None:
        for old in outdated(to, now - timedelta(days=keep_days)):
            old.unlink()
            click.echo(f"{old}: removed, older than {keep_days} days")


@click.command()
@click.argument("file", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.option("--data", type=click.Path(path_type=Path, file_okay=False), help="Data folder to restore into.")
def restore(file: Path, **given: Any) -> None:
    """Put a backup into an empty data folder or database; all of it, or nothing."""
    from quizroom.cli.places import clear_ends, settings_of  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.storage.backup import (  # noqa: PLC0415 - likewise
        BadBackup,
        DatabaseInUse,
        restore_backup,
    )
    from quizroom.storage.database import open_database  # noqa: PLC0415 - likewise

    settings = settings_of(given, make_data_folder=True)
    with clear_ends(settings):
        engine = open_database(settings.database_url)
        try:
            with file.open("rb") as source:
                kept = restore_backup(engine, source)
        except BadBackup as reason:
            raise click.ClickException(f"{file}: {reason} Nothing was restored.") from reason
        except DatabaseInUse as held:
            raise click.ClickException(
                f"This database is in use: it holds {held}. Nothing was restored. Give an empty data folder "
                "with --data"
            ) from held
        finally:
            engine.dispose()
    click.echo(f"Restored as of {kept.made_at}: {sum(kept.rows.values())} rows ({_counts(kept.rows)})")


def outdated(folder: Path, before: datetime) -> list[Path]:
    """Backups in a folder, by their names, that were made earlier."""
    found = ((path, NAMED.fullmatch(path.name)) for path in sorted(folder.iterdir()))
    return [path for path, named in found if named and _made_at(named[1]) < before]


def _made_at(written: str) -> datetime:
    return datetime.strptime(written, "%Y%m%dT%H%M%SZ").replace(tzinfo=UTC)


def _write(database_url: str, target: Path, now: datetime) -> Any:
    from quizroom import __version__  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.storage.backup import write_backup  # noqa: PLC0415 - likewise
    from quizroom.storage.database import open_database  # noqa: PLC0415 - likewise

    beside = target.with_name(f".{target.name}.part")
    engine = open_database(database_url)
    try:
        # Only the owner may read it; the name appears once the file is whole and on the disk.
        with os.fdopen(os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600), "wb") as out:
            kept = write_backup(engine, out, now=now, program=__version__)
            out.flush()
            os.fsync(out.fileno())
        beside.replace(target)
    finally:
        engine.dispose()
        beside.unlink(missing_ok=True)
    return kept.rows


def _counts(rows: Any) -> str:
    return ", ".join(f"{name} {count}" for name, count in rows.items()) or "nothing"
