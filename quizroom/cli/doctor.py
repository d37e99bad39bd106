"""`quizroom doctor`."""

import os
from collections import Counter
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

if TYPE_CHECKING:
    from quizroom.doctor.finding import Finding

HANGING = " " * 8


@click.command()
@click.option("--data", type=click.Path(path_type=Path, file_okay=False), help="Data folder of the server.")
@click.option("--port", type=int, help="Port of the server [default: 8000].")
@click.option("--content", type=click.Path(path_type=Path, file_okay=False), help="Content folder.")
@click.option("--address", help="Address that players use, such as https://review.example.")
def doctor(**given: Any) -> None:
    """Examine this deployment and say what is wrong and what to do; ends with an error if a class could not
    be taken.
    """
    from quizroom.cli.places import own_address, players_address, settings_of  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.doctor.examination import examine  # noqa: PLC0415 - likewise

    settings = settings_of(given)
    counts: Counter[str] = Counter()
    for finding in examine(
        settings,
        os.environ,
        here=own_address(settings, settings.port),
        players=players_address(settings, settings.port),
    ):
        counts[finding.kind] += 1
        click.echo(written(finding))
    click.echo(f"{_counted(counts['fault'], 'fault')}, {_counted(counts['remark'], 'remark')}.")
    if counts["fault"]:
        raise SystemExit(1)


def written(finding: "Finding") -> str:
    """A finding in one line, and what to do in a second."""
    first = f"{finding.kind:<8}{finding.about}: {finding.said}"
    return f"{first}\n{HANGING}{finding.remedy}" if finding.remedy else first


def _counted(count: int, thing: str) -> str:
    return f"{count} {thing}" if count == 1 else f"{count} {thing}s"
