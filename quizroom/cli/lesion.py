"""`quizroom lesion`."""

import json
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING

import click

from quizroom.cli.unknown import no_such

if TYPE_CHECKING:
    from collections.abc import Iterable

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
    spared = _spared_beside(catalogue, found)
    as_json = {**asdict(found), "spared": spared}
    click.echo(json.dumps(as_json, indent=1) if output == "json" else _text(catalogue, found, spared))


def _cut(catalogue: "Catalogue", name: str, level: str | None) -> "Cut":
    from quizroom.knowledge.anatomy.lesion import Cut, cut_at  # noqa: PLC0415 - not before `serve` patches

    nerve = _nerve_named(catalogue, name)
    if nerve is None:
        raise no_such("nerve", name, catalogue.nerves)
    if level is None:
        return Cut(nerves=frozenset((nerve,)))
    levels = {
        one.id.removeprefix(f"{nerve}_"): one.id for one in catalogue.levels.values() if one.nerve == nerve
    }
    levels |= {one: one for one in levels.values()}
    said = {_plain(one): one for one in levels}
    if _plain(level) not in said:
        raise no_such(f"level of {nerve}", level, levels)
    return cut_at(catalogue, levels[said[_plain(level)]])


def _plain(level: str) -> str:
    """A level as people say it: "surgical neck" for at_surgical_neck."""
    words = level.casefold().replace("-", "_").replace(" ", "_")
    return words.removeprefix("at_").removeprefix("in_").removeprefix("the_")


def _nerve_named(catalogue: "Catalogue", name: str) -> str | None:
    """By its id or any of its names: "c5", "C5", "C5 spinal nerve", "common peroneal nerve"."""
    from quizroom.knowledge.lexicon import lexicon  # noqa: PLC0415 - not before `serve` patches
    from quizroom.knowledge.terms import normalise  # noqa: PLC0415 - likewise

    if name in catalogue.nerves:
        return name
    found = {term.concept for term in lexicon(catalogue).get(normalise(name), ()) if term.kind == "nerve"}
    return found.pop() if len(found) == 1 else None


def _spared_beside(catalogue: "Catalogue", found: "Lesion") -> list[str]:
    """Ids of the muscles and parts that are spared in the regions in which others are hit."""
    hit = {(one.muscle, one.part) for one in found.muscles}
    regions = {catalogue.muscles[muscle].region for muscle, _ in hit}
    beside = (muscle for muscle in catalogue.muscles.values() if muscle.region in regions)
    parts = ((muscle.id, part) for muscle in beside for part in [one.id for one in muscle.parts] or [""])
    spared = [
        (muscle, part) for muscle, part in parts if (muscle, part) not in hit and (muscle, "") not in hit
    ]
    return [f"{muscle}/{part}" if part else muscle for muscle, part in spared]


def _names(catalogue: "Catalogue", units: "Iterable[str]") -> str:
    """Muscles and parts in words; where all parts of a muscle are among them, the muscle."""
    from quizroom.knowledge.wording import muscle_name  # noqa: PLC0415 - not before `serve` patches

    by_muscle: dict[str, list[str]] = {}
    for unit in units:
        muscle, _, part = unit.partition("/")
        by_muscle.setdefault(muscle, []).append(part)
    words = []
    for muscle, parts in by_muscle.items():
        whole = "" in parts or len(parts) == len(catalogue.muscles[muscle].parts)
        words += [muscle_name(catalogue, muscle, part) for part in ([""] if whole else parts)]
    return ", ".join(words) or "none"


def _text(catalogue: "Catalogue", found: "Lesion", spared: list[str]) -> str:
    from quizroom.knowledge.anatomy.lesion import EXPECTATION  # noqa: PLC0415 - not before `serve` patches

    movements = [
        f"  {catalogue.movements[one.movement].name} at the {catalogue.joints[one.joint].name}: {one.effect}"
        for one in found.movements
    ]
    lines = [
        f"Lost: {_names(catalogue, found.with_damage('lost'))}",
        f"Weakened: {_names(catalogue, found.with_damage('weakened'))}",
        f"Spared beside these: {_names(catalogue, spared)}",
        "Movements:",
        *(movements or ["  none"]),
    ]
    return "\n".join([*lines, EXPECTATION])
