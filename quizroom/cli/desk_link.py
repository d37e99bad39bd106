"""`quizroom desk-link`."""

from pathlib import Path
from typing import Any

import click


@click.command("desk-link")
@click.option("--data", type=click.Path(path_type=Path, file_okay=False), help="Data folder of the server.")
@click.option("--port", type=int, help="Port of the server [default: 8000].")
def desk_link(**given: Any) -> None:
    """Print a fresh one-time link to the host's desk."""
    from quizroom.cli.places import (  # noqa: PLC0415 - `serve` must not load this first
        clear_ends,
        own_address,
        settings_of,
    )

    settings = settings_of(given, make_data_folder=True)
    with clear_ends(settings):
        key = new_desk_key(settings.database_url, days_ahead=settings.days_ahead)
    click.echo(f"{own_address(settings, settings.port)}/desk/enter/{key}")


def new_desk_key(database_url: str, *, days_ahead: int = 0) -> str:
    """A one-time key, put into the store by somebody who may write there."""
    from quizroom.pages.host_parts import entry_over  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.storage.database import open_database  # noqa: PLC0415 - likewise
    from quizroom.storage.system_clock import SystemClock  # noqa: PLC0415 - likewise

    engine = open_database(database_url)
    try:
        return entry_over(engine, clock=SystemClock(days_ahead=days_ahead)).new_key()
    finally:
        engine.dispose()
