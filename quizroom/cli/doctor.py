"""`quizroom doctor`."""

from pathlib import Path
from typing import Any

import click

SIGNS = {"well": "well ", "mind": "mind ", "wrong": "WRONG"}


@click.command()
@click.option("--data", type=click.Path(path_type=Path, file_okay=False), help="Data folder of the server.")
@click.option("--content", type=click.Path(path_type=Path, file_okay=False), help="Content folder.")
@click.option("--address", help="Address that players use.")
def doctor(**given: Any) -> None:
    """Look a deployment over with the server's own settings, and say what is wrong and what to do.

    Ends with 1 if anything is wrong; what is only to be minded does not count.
    """
    from quizroom.cli.checkup import checkup  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.cli.places import settings_of  # noqa: PLC0415 - likewise

    wrong = 0
    for finding in checkup(settings_of(given)):
        click.echo(f"{SIGNS[finding.state]}  {finding.what}")
        if finding.remedy:
            click.echo(f"       {finding.remedy}")
        wrong += finding.state == "wrong"
    if wrong:
        raise click.exceptions.Exit(1)
