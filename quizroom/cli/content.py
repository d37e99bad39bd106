"""`quizroom content`."""

import sys
from pathlib import Path

import click


@click.group()
def content() -> None:
    """Look after the knowledge base."""


@content.command()
@click.argument("course", required=False, type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.option("--content", "folder", type=click.Path(path_type=Path, file_okay=False), help="Content folder.")
def check(course: Path | None, folder: Path | None) -> None:
    """List all findings at once, each with its file, key and remedy; COURSE is a list of your own."""
    from quizroom.knowledge.load import content_folder, load_content  # noqa: PLC0415 - not before `serve` patches
    from quizroom.knowledge.report import findings_of, report  # noqa: PLC0415 - likewise

    loaded = load_content(folder or content_folder(), (course,) if course else ())
    findings = findings_of(loaded)
    click.echo(report(loaded, findings))
    sys.exit(1 if findings else 0)
