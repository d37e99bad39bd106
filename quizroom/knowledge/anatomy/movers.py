"""Which muscles do a movement."""

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import Fact
from quizroom.knowledge.model import Action, Status

_EVERY: tuple[Status, ...] = ("core", "variant", "minority")


def movers(
    catalogue: Catalogue, joint: str, movement: str, statuses: tuple[Status, ...] = _EVERY
) -> tuple[Fact, ...]:
    """The action facts for a movement at a joint, one for each muscle or part that does it."""
    facts = catalogue.index.facts_with.get(("action", f"{joint}.{movement}"), ())
    return tuple(fact for fact in facts if fact.status in statuses)


def prime_movers(catalogue: Catalogue, joint: str, movement: str) -> tuple[Fact, ...]:
    """The core actions in which a muscle or part is a prime mover."""
    return tuple(
        fact
        for fact in movers(catalogue, joint, movement, ("core",))
        if isinstance(fact.row, Action) and fact.row.role == "prime"
    )


def antagonist(catalogue: Catalogue, movement: str) -> str:
    """The opposite movement."""
    return catalogue.movements[movement].antagonist
