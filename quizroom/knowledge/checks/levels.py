"""Rules: levels of injury lie on known nerves, in order."""

from collections.abc import Iterator

from quizroom.knowledge.anatomy.lesion import unit
from quizroom.knowledge.anatomy.supply import nerve_descendants, supplies_of_nerve
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks.flaw import Flaw, at_entry
from quizroom.knowledge.checks.references import unknown_in_entries
from quizroom.knowledge.model import Level
from quizroom.knowledge.suggest import suggest


def every_level_lies_on_a_known_nerve(catalogue: Catalogue) -> Iterator[Flaw]:
    """A level of levels.toml names the nerve that it is a place of."""
    nerves = ((level.id, (level.nerve,)) for level in catalogue.levels.values())
    yield from unknown_in_entries(catalogue, "levels", "nerve", nerves, catalogue.nerves)


def levels_spare_what_their_nerve_reaches(catalogue: Catalogue) -> Iterator[Flaw]:
    """What a level spares or doubts is a branch of its nerve, or a muscle (or part) that it supplies."""
    for level in catalogue.levels.values():
        reached = {*nerve_descendants(catalogue, level.nerve), *_muscles(catalogue, level.nerve)}
        for field, named in (("spares", level.spares), ("doubts", level.doubts)):
            for one in set(named) - reached:
                message = f'"{one}" is no branch of {level.nerve}, nor supplied by it'
                yield at_entry(catalogue, "levels", level.id, message, suggest(one, reached), field=field)


def distal_levels_spare_more(catalogue: Catalogue) -> Iterator[Flaw]:
    """What a proximal level of a nerve spares, its more distal ones spare too."""
    for level in catalogue.levels.values():
        for other in _above(catalogue, level):
            for spared in set(other.spares) - set(level.spares):
                message = f'"{other.id}" is more proximal and spares "{spared}", this level does not'
                remedy = f'add "{spared}" to spares, or mend the order of the two levels'
                yield at_entry(catalogue, "levels", level.id, message, remedy, field="spares")


def _above(catalogue: Catalogue, level: Level) -> list[Level]:
    return [
        other
        for other in catalogue.levels.values()
        if other.nerve == level.nerve and other.order < level.order
    ]


def _muscles(catalogue: Catalogue, nerve: str) -> Iterator[str]:
    for fact in supplies_of_nerve(catalogue, nerve, ("core", "variant", "minority")):
        yield fact.muscle
        parts = [part.id for part in catalogue.muscles[fact.muscle].parts]
        yield from (unit(fact.muscle, part) for part in parts if fact.part in ("", part))
