"""`quizroom serve`."""

import gc
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import click


@click.command()
@click.option("--host", help="Address to listen on [default: all].")
@click.option("--port", type=int, help="Port to listen on; 0 takes a free one [default: 8000].")
@click.option("--data", type=click.Path(path_type=Path, file_okay=False), help="Data folder.")
@click.option("--content", type=click.Path(path_type=Path, file_okay=False), help="Content folder.")
@click.option("--address", help="Address that players use, such as https://review.example.")
def serve(**given: Any) -> None:
    """Start the server; print where it is, the link to the desk and where the data lies."""
    # Nothing that a start makes is garbage, and looking for some takes time; the server turns it on again.
    gc.disable()
    # The server module comes first: it patches the standard library before sockets and locks are made.
    from quizroom.app import serve as run  # noqa: PLC0415 - only this command may patch anything
    from quizroom.cli.logs import set_up_log  # noqa: PLC0415 - after the patch
    from quizroom.cli.places import (  # noqa: PLC0415 - likewise
        catalogue_of,
        clear_ends,
        own_address,
        players_address,
        settings_of,
    )
    from quizroom.open_files import raise_file_limit  # noqa: PLC0415 - likewise

    settings = settings_of(given, make_data_folder=True)
    if too_few := raise_file_limit(settings.capacity):
        click.echo(too_few, err=True)
    set_up_log(settings.log_format)
    catalogue = catalogue_of(settings.content)

    def ready(port: int, key: str) -> None:
        _announce(own_address(settings, port), players_address(settings, port), key, settings.data)

    with clear_ends(settings), _clear_ends_of_serving(settings.port):
        run(settings, catalogue, players_address=lambda port: players_address(settings, port), ready=ready)
        click.echo("Ended as asked. Open reviews go on where they were at the next start.")


@contextmanager
def _clear_ends_of_serving(port: int) -> Iterator[None]:
    """Let what keeps the server from listening, and whoever stops it, end it in a sentence."""
    from quizroom.pages.bundle import NotBuilt  # noqa: PLC0415 - after the patch

    try:
        yield
    except NotBuilt as reason:
        raise click.ClickException(str(reason)) from reason
    except OSError as error:
        raise click.ClickException(
            f"Cannot listen on port {port}: {error.strerror}. Is quizroom running already? "
            "Another port can be given: --port 8001"
        ) from error
    except KeyboardInterrupt:
        click.echo("Stopped. Open reviews go on where they were at the next start.")


def _announce(here: str, players: str, key: str, data: Path) -> None:
    click.echo(f"quizroom is ready at {here}")
    click.echo(f"Players join at      {players}")
    click.echo(f"The host's desk is   {here}/desk/enter/{key}")
    click.echo("                     (the link works once; `python3 -m quizroom desk-link` prints another)")
    click.echo(f"Data lies in         {data.resolve()}")
    sys.stdout.flush()
