"""`quizroom lesion`."""

import json
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

if TYPE_CHECKING:
    from quizroom.knowledge.anatomy.lesion import Cut, Lesion
    from quizroom.knowledge.catalogue import Catalogue


@click.command()
@click.argument("nerve")
@click.option(
    "--at", "level", help="Level of the injury, such as at_elbow [default: where the nerve begins]."
)
@click.option("--format", "output", type=click.Choice(["text", "json"]), default="text", show_default=True)
@click.option("--content", "folder", type=click.Path(path_type=Path, file_okay=False), help="Content folder.")
def lesion(nerve: str, level: str | None, output: str, folder: Path | None) -> None:
    """Say what a complete lesion of NERVE (a nerve, cord, trunk or root, by id or name) takes away."""
    from quizroom.cli.places import catalogue_of  # noqa: PLC0415 - not before `serve` patches
    from quizroom.knowledge.anatomy.lesion import lesion_of  # noqa: PLC0415 - likewise

    catalogue = catalogue_of(folder)
    found = lesion_of(catalogue, _cut(catalogue, nerve, level))
    click.echo(json.dumps(asdict(found), indent=1) if output == "json" else _text(catalogue, found))


def _cut(catalogue: "Catalogue", name: str, level: str | None) -> "Cut":
    from quizroom.knowledge.anatomy.lesion import Cut, cut_at  # noqa: PLC0415 - not before `serve` patches

    nerve = _nerve_named(catalogue, name)
    if nerve is None:
        raise click.ClickException(_no_such("nerve", name, tuple(catalogue.nerves)))
    if level is None:
        return Cut(nerves=frozenset((nerve,)))
    levels = {
        one.id.removeprefix(f"{nerve}_"): one.id for one in catalogue.levels.values() if one.nerve == nerve
    }
    levels |= {one: one for one in levels.values()}
    if level not in levels:
        raise click.ClickException(_no_such(f"level of {nerve}", level, tuple(levels)))
    return cut_at(catalogue, levels[level])


def _nerve_named(catalogue: "Catalogue", name: str) -> str | None:
    """By its id or any of its names: "c5", "C5", "C5 spinal nerve", "common peroneal nerve"."""
    from quizroom.knowledge.lexicon import lexicon  # noqa: PLC0415 - not before `serve` patches
    from quizroom.knowledge.terms import normalise  # noqa: PLC0415 - likewise

    if name in catalogue.nerves:
        return name
    found = {term.concept for term in lexicon(catalogue).get(normalise(name), ()) if term.kind == "nerve"}
    return found.pop() if len(found) == 1 else None


def _text(catalogue: "Catalogue", found: "Lesion") -> str:
    from quizroom.knowledge.anatomy.lesion import EXPECTATION  # noqa: PLC0415 - not before `serve` patches
    from quizroom.knowledge.wording import muscle_name  # noqa: PLC0415 - likewise

    def names(damage: Any) -> str:
        hit = (one for one in found.muscles if one.damage == damage)
        return ", ".join(muscle_name(catalogue, one.muscle, one.part) for one in hit) or "none"

    movements = [
        f"  {catalogue.movements[one.movement].name} at the {catalogue.joints[one.joint].name}: {one.effect}"
        for one in found.movements
    ]
    lines = [
        f"Lost: {names('lost')}",
        f"Weakened: {names('weakened')}",
        "Movements:",
        *(movements or ["  none"]),
    ]
    return "\n".join([*lines, EXPECTATION])


def _no_such(kind: str, word: str, known: tuple[str, ...]) -> str:
    from quizroom.knowledge.suggest import suggest  # noqa: PLC0415 - not before `serve` patches

    return f'There is no {kind} "{word}": {suggest(word, known)}'
