"""`quizroom items`."""

from pathlib import Path

import click


@click.command()
@click.option("--course", required=True, help="Id of a course list.")
@click.option(
    "--family", "families", multiple=True, help="Family of items; may be repeated [default: the course's]."
)
@click.option("--seed", type=int, default=1, show_default=True, help="The same seed gives the same items.")
@click.option(
    "--rounds", type=click.IntRange(1, 1000), help="Deal so many items [default: print all there are]."
)
@click.option("--format", "output", type=click.Choice(["text", "jsonl"]), default="text", show_default=True)
@click.option("--content", type=click.Path(path_type=Path, file_okay=False), help="Content folder.")
def items(
    course: str,
    families: tuple[str, ...],
    seed: int,
    rounds: int | None,
    output: str,
    content: Path | None,
) -> None:
    """Print items, with keys and reasons, as text or one JSON object a line."""
    raise NotImplementedError
