"""A content in which each muscle has the record of another: what a comparison must not let pass."""

from dataclasses import replace

from quizroom.knowledge.catalogue import Catalogue, build_catalogue
from quizroom.knowledge.model import Muscle
from tests.reference.comparison import VOCABULARY

STEP = 97
"""How far apart in the alphabet the muscles lie that change places."""
RECORD = (
    "name",
    "origins",
    "insertions",
    "actions",
    "nerves",
    "arteries",
    "names",
    "latin",
    "compartment",
    "ids",
    "parts",
)


def swapped(catalogue: Catalogue) -> Catalogue:
    """The catalogue with all records moved on by some places in the alphabet, under the old ids."""
    muscles = sorted(catalogue.muscles.values(), key=lambda muscle: muscle.id)
    moved = [_with_record(one, muscles[place - STEP]) for place, one in enumerate(muscles)]
    tables = {table: getattr(catalogue, table).values() for table in VOCABULARY}
    return build_catalogue(**tables, muscles=moved)


def _with_record(muscle: Muscle, other: Muscle) -> Muscle:
    return replace(muscle, **{field: getattr(other, field) for field in RECORD})


def turned_round(catalogue: Catalogue) -> Catalogue:
    """The catalogue with every action called its opposite."""
    muscles = (
        replace(
            muscle,
            actions=tuple(
                replace(one, movement=catalogue.movements[one.movement].antagonist) for one in muscle.actions
            ),
        )
        for muscle in catalogue.muscles.values()
    )
    tables = {table: getattr(catalogue, table).values() for table in VOCABULARY}
    return build_catalogue(**tables, muscles=muscles)
