"""Reviews whose items are known to have every format, whatever the content holds today."""

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import cache
from typing import Any

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.load import content_folder, load_content
from quizroom.protocol.blueprint import BlueprintCell, BlueprintChoice
from quizroom.protocol.plans import blueprint_of
from quizroom.questions.deck import ALL_FORMATS, LETTERED, DealPlan, deal
from quizroom.questions.model import Family, Format, Item
from quizroom.questions.waiting import told_before

COURSE = "upper_limb_regional"
FAMILIES: tuple[Family, ...] = ("origin", "nerve", "set", "ordering", "matching")
MOST_SEEDS = 200
LONG_NAME = 44
"""As long as "levator labii superioris alaeque nasi", and some letters more."""


def review_with(formats: Iterable[Format], *, rounds: int) -> dict[str, Any]:
    """How to lay out a review of so many rounds that holds all these formats, and no typed one unasked."""
    wanted = set(formats)
    typed = not wanted <= set(LETTERED)
    return _first_review(lambda items: wanted <= {item.format for item in items}, rounds=rounds, typed=typed)


def review_about(muscle: str, *, rounds: int) -> dict[str, Any]:
    """The same for a review that begins with four options or more, and with this muscle."""
    return _first_review(
        lambda items: items[0].muscles[0] == muscle and len(items[0].options) >= 4, rounds=rounds, typed=False
    )


def review_of_long_names(*, rounds: int) -> dict[str, Any]:
    """The same for a review of the whole body that begins with names as long as anatomy has them."""
    course: tuple[str, tuple[Family, ...]] = ("regional_gross_anatomy", ("look_alike", "nerve", "set"))
    found = _first_review(
        lambda items: max((len(option.text) for option in items[0].options), default=0) >= LONG_NAME,
        rounds=rounds,
        typed=False,
        course=course,
    )
    return {**found, "course": {"id": course[0], "families": course[1]}}


@dataclass(frozen=True)
class Waiting:
    """A review in which the record of one round, counted from 1, waits for a later one."""

    plan: dict[str, Any]
    waits: int
    until: int
    muscle: str


def review_with_a_record_waiting() -> Waiting:
    """More rounds about the arm than it has muscles: one comes back, so its first record would tell a key.

    The key does not stand in anything before it, so that whatever tells it has told too much.
    """
    families: tuple[Family, ...] = ("origin", "nerve")
    cells = tuple(BlueprintCell(region="arm", family=family, rounds=3) for family in families)
    chosen = BlueprintChoice(cells=cells)
    catalogue = _catalogue()
    for seed in range(1, MOST_SEEDS):
        plan = DealPlan(families=(), rounds=0, seed=seed, blueprint=blueprint_of(chosen))
        items = deal(catalogue, catalogue.courses[COURSE], plan)
        found = _waiting(items)
        if found:
            laid_out = {"rounds": len(items), "seed": seed, "typed": False, "blueprint": chosen}
            waits, until = found
            muscle = items[waits].records[0].name
            return Waiting(plan=laid_out, waits=waits + 1, until=until + 1, muscle=muscle)
    raise AssertionError(f"in none of {MOST_SEEDS} reviews a record waits")


def _waiting(items: tuple[Item, ...]) -> tuple[int, int] | None:
    """The first place whose only record waits for another round about its muscle, if its key is new."""
    told = [told_before(item, items[place + 1 :]) for place, item in enumerate(items)]
    for place, item in enumerate(items):
        later = next((n for n in range(place + 1, len(items)) if items[n].muscles == item.muscles), None)
        if later is not None and not told[place].records:
            key = next(option.text for option in items[later].options if option.letter in items[later].key)
            if key not in repr(told[: place + 1]):
                return place, later
    return None


def _first_review(
    is_wanted: Callable[[tuple[Item, ...]], bool],
    *,
    rounds: int,
    typed: bool,
    course: tuple[str, tuple[Family, ...]] = (COURSE, FAMILIES),
) -> dict[str, Any]:
    catalogue, formats = _catalogue(), ALL_FORMATS if typed else LETTERED
    for seed in range(1, MOST_SEEDS):
        plan = DealPlan(families=course[1], rounds=rounds, seed=seed, formats=formats)
        if is_wanted(deal(catalogue, catalogue.courses[course[0]], plan)):
            return {"rounds": rounds, "seed": seed, "typed": typed}
    raise AssertionError(f"none of {MOST_SEEDS} reviews of {rounds} rounds is such")


@cache
def _catalogue() -> Catalogue:
    loaded = load_content(content_folder())
    assert loaded.catalogue is not None
    return loaded.catalogue
