"""`quizroom content`."""

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
    raise NotImplementedError
