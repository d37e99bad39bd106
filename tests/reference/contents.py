"""Other contents: without contested readings, and spoiled as a comparison must not let pass."""

from collections.abc import Iterable
from dataclasses import replace
from typing import Any

from quizroom.knowledge.catalogue import Catalogue, build_catalogue
from quizroom.knowledge.model import Muscle

VOCABULARY = ("bones", "landmarks", "joints", "movements", "nerves", "arteries", "compartments")
STEP = 97
"""How far apart in the alphabet the muscles lie that change places."""
ROWS = ("origins", "insertions", "actions", "nerves", "arteries")
RECORD = (*ROWS, "name", "names", "latin", "compartment", "ids", "parts")


def swapped(catalogue: Catalogue) -> Catalogue:
    """The catalogue with all records moved on by some places in the alphabet, under the old ids."""
    muscles = sorted(catalogue.muscles.values(), key=lambda muscle: muscle.id)
    moved = (_with_record(one, muscles[place - STEP]) for place, one in enumerate(muscles))
    return _with_muscles(catalogue, moved)


def turned_round(catalogue: Catalogue) -> Catalogue:
    """The catalogue with every action called its opposite."""
    return _with_muscles(catalogue, (_opposite(catalogue, one) for one in catalogue.muscles.values()))


def core_only(catalogue: Catalogue) -> Catalogue:
    """The catalogue without the readings on which books differ."""
    return _with_muscles(catalogue, map(_core_of, catalogue.muscles.values()))


def _with_muscles(catalogue: Catalogue, muscles: Iterable[Muscle]) -> Catalogue:
    tables = {table: getattr(catalogue, table).values() for table in VOCABULARY}
    return build_catalogue(**tables, muscles=muscles)


def _with_record(muscle: Muscle, other: Muscle) -> Muscle:
    return replace(muscle, **{field: getattr(other, field) for field in RECORD})


def _opposite(catalogue: Catalogue, muscle: Muscle) -> Muscle:
    movements = catalogue.movements
    actions = (replace(one, movement=movements[one.movement].antagonist) for one in muscle.actions)
    return replace(muscle, actions=tuple(actions))


def _core_of(muscle: Muscle) -> Muscle:
    core: dict[str, Any] = {
        table: tuple(row for row in getattr(muscle, table) if row.status == "core") for table in ROWS
    }
    return replace(muscle, **core)
