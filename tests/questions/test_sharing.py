"""Whole rounds from weights, and even shares of a grid."""

from collections import Counter

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.questions.cells import CellYield
from quizroom.questions.model import FAMILIES
from quizroom.questions.sharing import even_rounds, whole_rounds

weights = st.lists(st.integers(0, 60), max_size=40)


@pytest.mark.parametrize(
    "shares,rounds,whole",
    [
        # the textbook example of the method, 100 000 votes for 10 seats (from memory)
        ((47_000, 16_000, 15_900, 12_000, 6_000, 3_100), 10, (5, 2, 1, 1, 1, 0)),
        ((1, 1, 1), 10, (4, 3, 3)),
        ((2, 1), 3, (2, 1)),
        ((0, 5), 4, (0, 4)),
        ((0, 0), 4, (0, 0)),
        ((), 4, ()),
    ],
)
def test_the_largest_remainders_get_what_is_left(
    shares: tuple[int, ...], rounds: int, whole: tuple[int, ...]
) -> None:
    assert whole_rounds(shares, rounds) == whole


@given(weights, st.integers(0, 60))
def test_shares_add_up_and_each_is_within_one_of_its_exact_share(shares: list[int], rounds: int) -> None:
    whole = whole_rounds(shares, rounds)
    total = sum(shares)
    assert sum(whole) == (rounds if total else 0)
    assert all(
        abs(given * total - weight * rounds) < total
        for given, weight in zip(whole, shares, strict=True)
        if total
    )


@given(st.permutations(range(1, 8)), st.integers(0, 60))
def test_more_weight_never_gets_less(shares: list[int], rounds: int) -> None:
    by_weight = [given for _, given in sorted(zip(shares, whole_rounds(shares, rounds), strict=True))]
    assert by_weight == sorted(by_weight)


@pytest.mark.parametrize("shares,rounds", [((-1, 2), 3), ((1,), -1)])
def test_negative_numbers_are_an_error(shares: tuple[int, ...], rounds: int) -> None:
    with pytest.raises(ValueError, match="not negative"):
        whole_rounds(shares, rounds)


def cells(most: list[list[int]]) -> list[CellYield]:
    return [
        CellYield(region=f"region {row}", family=FAMILIES[column], most=limit, reason="")
        for row, limits in enumerate(most)
        for column, limit in enumerate(limits)
    ]


grids = st.integers(1, 5).flatmap(
    lambda width: st.lists(
        st.lists(st.integers(0, 9), min_size=width, max_size=width), min_size=1, max_size=6
    )
)


@given(grids, st.integers(0, 60))
def test_an_even_share_never_asks_for_more_than_there_is(most: list[list[int]], rounds: int) -> None:
    places = cells(most)
    given_rounds = even_rounds(places, rounds)
    assert all(given <= place.most for given, place in zip(given_rounds, places, strict=True))
    assert sum(given_rounds) == min(rounds, sum(place.most for place in places))


@given(st.integers(1, 5), st.integers(1, 5), st.integers(0, 60))
def test_where_there_is_plenty_regions_and_families_differ_by_one_at_most(
    rows: int, columns: int, rounds: int
) -> None:
    places = cells([[60] * columns] * rows)
    by_region: Counter[str] = Counter({place.region: 0 for place in places})
    by_family: Counter[str] = Counter({place.family: 0 for place in places})
    for given_rounds, place in zip(even_rounds(places, rounds), places, strict=True):
        by_region[place.region] += given_rounds
        by_family[place.family] += given_rounds
    for counts in (by_region, by_family):
        assert max(counts.values()) - min(counts.values()) <= 1
