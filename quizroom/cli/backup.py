"""`quizroom backup` and `quizroom restore`."""

import os
import re
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import IO, Any

import click

NAME = "quizroom-{at:%Y%m%dT%H%M%SZ}.backup.gz"
NAMED = re.compile(r"quizroom-(\d{8}T\d{6}Z)\.backup\.gz")
PIPE = Path("-")
"""Stands for standard output, or standard input: a container of read-only files has no other way."""


@click.command()
@click.argument("to", type=click.Path(path_type=Path, allow_dash=True))
@click.option("--data", type=click.Path(path_type=Path, file_okay=False), help="Data folder of the server.")
@click.option(
    "--keep-days", type=click.IntRange(min=1), help="Remove backups in the folder that are older than this."
)
def backup(to: Path, keep_days: int | None, **given: Any) -> None:
    """Write all that is stored to a file, into a folder, or to a pipe (-); the server may be running."""
    from quizroom.cli.places import clear_ends, settings_of  # noqa: PLC0415 - `serve` must not load this first

    settings = settings_of(given)
    now = datetime.now(UTC)
    if keep_days is not None and not to.is_dir():
        raise click.ClickException(
            f"{to} is no folder: make it first. --keep-days removes older backups in it."
        )
    target = to / NAME.format(at=now) if to.is_dir() else to
    with clear_ends(settings), _new_file(target) as out:
        rows = _write(settings.database_url, out, now)
    click.echo(f"{target}: {sum(rows.values())} rows ({_counts(rows)})", err=target == PIPE)
    if keep_days is not None:
        for old in outdated(to, now - timedelta(days=keep_days)):
            old.unlink()
            click.echo(f"{old}: removed, older than {keep_days} days")


@click.command()
@click.argument("file", type=click.Path(path_type=Path, exists=True, dir_okay=False, allow_dash=True))
@click.option("--data", type=click.Path(path_type=Path, file_okay=False), help="Data folder to restore into.")
def restore(file: Path, **given: Any) -> None:
    """Put a backup (- for one from a pipe) into an empty data folder or database; all of it, or nothing."""
    from quizroom.cli.places import clear_ends, settings_of  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.storage.backup import (  # noqa: PLC0415 - likewise
        BadBackup,
        DatabaseInUse,
        restore_backup,
    )
    from quizroom.storage.database import open_database  # noqa: PLC0415 - likewise

    settings = settings_of(given, make_data_folder=True)
    with _to_read(file) as source, clear_ends(settings):
        engine = open_database(settings.database_url)
        try:
            kept = restore_backup(engine, source)
        except BadBackup as reason:
            raise click.ClickException(f"{file}: {reason} Nothing was restored.") from reason
        except DatabaseInUse as held:
            raise click.ClickException(
                f"This database is in use: it holds {held}. Nothing was restored. Give an empty data folder "
                "with --data, or an empty database with QUIZROOM_DATABASE_URL"
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


@contextmanager
def _new_file(target: Path) -> Iterator[IO[bytes]]:
    """What is written here has its name once it is whole and on the disk, and replaces nothing."""
    if target == PIPE:
        yield sys.stdout.buffer
        return
    if target.exists():
        raise click.ClickException(
            f"{target} is there already, and nothing was written. Give another name, or a folder"
        )
    beside = target.with_name(f".{target.name}.part")
    try:
        # Only the owner may read it.
        handle = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
        try:
            with os.fdopen(handle, "wb") as out:
                yield out
                out.flush()
                os.fsync(out.fileno())
            beside.replace(target)
        finally:
            beside.unlink(missing_ok=True)
    except OSError as error:
        raise click.ClickException(f"{target} cannot be written: {error.strerror}. Give another") from error


@contextmanager
def _to_read(file: Path) -> Iterator[IO[bytes]]:
    if file == PIPE:
        yield sys.stdin.buffer
        return
    try:
        source = file.open("rb")
    except OSError as error:
        raise click.ClickException(f"{file} cannot be read: {error.strerror}") from error
    with source:
        yield source


def _write(database_url: str, out: IO[bytes], now: datetime) -> Any:
    from quizroom import __version__  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.storage.backup import write_backup  # noqa: PLC0415 - likewise
    from quizroom.storage.database import open_as_it_is  # noqa: PLC0415 - likewise

    engine = open_as_it_is(database_url)
    try:
        return write_backup(engine, out, now=now, program=__version__).rows
    finally:
        engine.dispose()


def _counts(rows: Any) -> str:
    return ", ".join(f"{name} {count}" for name, count in rows.items()) or "nothing"
