"""What a server works out once, when it first reads the content and deals: a second of each process."""

from functools import cache

DEALT_FROM = ("arm_and_forearm", "upper_limb_regional")
"""The course lists of most reviews that tests lay out."""


def read_and_deal() -> None:
    """Read the shipped content, which a start then finds read, and deal once from the usual course lists."""
    from quizroom.cli import places  # noqa: PLC0415 - after the patch of the process that calls this
    from quizroom.questions.deck import ALL_FORMATS, DealPlan, deal  # noqa: PLC0415 - likewise
    from quizroom.questions.model import FAMILIES  # noqa: PLC0415 - likewise

    places.catalogue_of = cache(places.catalogue_of)
    catalogue = places.catalogue_of(None)
    for course in (catalogue.courses[name] for name in DEALT_FROM):
        families = tuple(family for family in FAMILIES if family in course.families)
        deal(catalogue, course, DealPlan(families=families, rounds=5, seed=1, formats=ALL_FORMATS))
