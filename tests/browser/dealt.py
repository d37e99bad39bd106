"""Reviews whose items are known to have every format, whatever the content holds today."""

from collections.abc import Iterable
from functools import cache
from itertools import count

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.load import content_folder, load_content
from quizroom.questions.deck import ALL_FORMATS, DealPlan, deal
from quizroom.questions.model import Family, Format

COURSE = "upper_limb_regional"
FAMILIES: tuple[Family, ...] = ("set", "origin", "nerve")
MOST_SEEDS = 3000


def seed_with(formats: Iterable[Format], *, rounds: int) -> int:
    """The first seed whose review of so many rounds holds all these formats."""
    wanted = set(formats)
    for seed in count(1):
        plan = DealPlan(families=FAMILIES, rounds=rounds, seed=seed, formats=ALL_FORMATS)
        if wanted <= {item.format for item in deal(_catalogue(), _catalogue().courses[COURSE], plan)}:
            return seed
        assert seed < MOST_SEEDS, f"no review of {rounds} rounds holds {wanted}"
    raise AssertionError


@cache
def _catalogue() -> Catalogue:
    loaded = load_content(content_folder())
    assert loaded.catalogue is not None
    return loaded.catalogue
