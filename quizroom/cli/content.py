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


@content.command()
@click.option("--format", "output", type=click.Choice(["csv"]), default="csv", show_default=True)
@click.option("--content", "folder", type=click.Path(path_type=Path, file_okay=False), help="Content folder.")
def export(output: str, folder: Path | None) -> None:  # noqa: ARG001 - csv is the only format so far
    """Print the knowledge base as a sheet, one fact a row."""
    from quizroom.cli.places import catalogue_of  # noqa: PLC0415 - not before `serve` patches
    from quizroom.exchange.sheet import sheet_rows, write_sheet  # noqa: PLC0415 - likewise

    click.echo(write_sheet(sheet_rows(catalogue_of(folder))), nl=False)


@content.command("import")
@click.argument("sheet", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.option("--write", is_flag=True, help="Write the changes; without it they are only shown.")
@click.option("--content", "folder", type=click.Path(path_type=Path, file_okay=False), help="Content folder.")
def import_(sheet: Path, *, write: bool, folder: Path | None) -> None:
    """Turn a CSV sheet of additions or corrections into changed content, or say row by row why not."""
    from quizroom.exchange.sheet_import import import_sheet, write_files  # noqa: PLC0415 - not before `serve`
    from quizroom.knowledge.load import content_folder  # noqa: PLC0415 - likewise

    place = folder or content_folder()
    try:
        result = import_sheet(sheet.read_text("utf-8"), place)
    except (ValueError, OSError) as error:
        raise click.ClickException(str(error)) from error
    click.echo(result.preview, nl=False)
    for refused in result.refused:
        click.echo(f"{sheet.name}:{refused.number}: {refused.message}", err=True)
    click.echo(
        f"{result.changed} changes, {result.unchanged} rows already so, {len(result.refused)} refused.",
        err=True,
    )
    if result.refused:
        raise click.ClickException("Nothing was written. Mend these rows and import the sheet again.")
    if write:
        write_files(place, result.files)
        click.echo(
            f"Written to {len(result.files)} files. Read them once more before you commit them.", err=True
        )
    elif result.changed:
        click.echo("Nothing was written yet: add --write when the preview is right.", err=True)
