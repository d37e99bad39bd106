"""Reviews whose items are known to have every format, whatever the content holds today."""

from collections.abc import Iterable
from functools import cache
from typing import Any

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.load import content_folder, load_content
from quizroom.questions.deck import ALL_FORMATS, LETTERED, DealPlan, deal
from quizroom.questions.model import Family, Format

COURSE = "upper_limb_regional"
FAMILIES: tuple[Family, ...] = ("set", "origin", "nerve")
MOST_SEEDS = 200


def review_with(formats: Iterable[Format], *, rounds: int) -> dict[str, Any]:
    """How to lay out a review of so many rounds that holds all these formats, and no typed one unasked."""
    wanted = set(formats)
    typed = not wanted <= set(LETTERED)
    catalogue = _catalogue()
    for seed in range(1, MOST_SEEDS):
        plan = DealPlan(
            families=FAMILIES, rounds=rounds, seed=seed, formats=ALL_FORMATS if typed else LETTERED
        )
        if wanted <= {item.format for item in deal(catalogue, catalogue.courses[COURSE], plan)}:
            return {"rounds": rounds, "seed": seed, "typed": typed}
    raise AssertionError(f"no review of {rounds} rounds holds {wanted}")


@cache
def _catalogue() -> Catalogue:
    loaded = load_content(content_folder())
    assert loaded.catalogue is not None
    return loaded.catalogue
