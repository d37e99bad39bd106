"""What must hold for any class and any marks."""

from itertools import permutations

from hypothesis import example, given, settings
from hypothesis import strategies as st

from quizroom.analysis.correlation import correlation_interval, pearson
from quizroom.analysis.explain_again import need
from quizroom.analysis.item_numbers import verdict_of
from quizroom.analysis.rasch import conditional, is_connected, prox, usable
from quizroom.analysis.reliability import alpha, kr_20, kr_21
from quizroom.analysis.symmetric import symmetric, without
from quizroom.analysis.upper_lower import discrimination, groups_of

MARK = st.sampled_from([0.0, 0.5, 1.0])
NAMES = st.text("abcdefgh", min_size=1, max_size=3)
CLASS = st.dictionaries(NAMES, st.integers(0, 6).map(float), min_size=1, max_size=40)
SCORED = st.integers(2, 5).flatmap(
    lambda items: st.lists(
        st.lists(st.sampled_from([0.0, 1.0]), min_size=items, max_size=items), min_size=2, max_size=14
    )
)


@given(CLASS)
def test_groups_have_their_size_and_nobody_is_more_than_whole(totals: dict[str, float]) -> None:
    found = groups_of(totals)
    for group in (found.upper, found.lower):
        assert abs(sum(group.values()) - found.size) < 1e-9
        assert all(0 < part <= 1 for part in group.values())


@given(CLASS, st.data())
def test_shared_places_do_not_depend_on_the_roster(totals: dict[str, float], data: st.DataObject) -> None:
    turned = dict(data.draw(st.permutations(list(totals.items()))))
    assert groups_of(turned).upper == groups_of(totals).upper
    assert groups_of(turned).lower == groups_of(totals).lower


@given(CLASS, st.data())
def test_discrimination_is_between_its_ends_and_turns_with_the_marks(
    totals: dict[str, float], data: st.DataObject
) -> None:
    marks = {player: data.draw(MARK) for player in totals}
    found = discrimination(marks, totals)
    if found is not None:
        assert -1 - 1e-9 <= found <= 1 + 1e-9
        turned = discrimination({player: 1 - mark for player, mark in marks.items()}, totals)
        assert turned is not None
        assert abs(found + turned) < 1e-9


@given(st.lists(st.tuples(MARK, st.floats(0, 10)), max_size=30))
def test_a_correlation_is_symmetric_within_its_ends_and_inside_its_interval(
    pairs: list[tuple[float, float]],
) -> None:
    one, other = [a for a, _ in pairs], [b for _, b in pairs]
    found = pearson(one, other)
    assert found == pearson(other, one)
    if found is not None:
        interval = correlation_interval(found, len(pairs))
        assert -1 <= interval.low <= found + 1e-12
        assert found - 1e-12 <= interval.high <= 1


@settings(max_examples=50)
@example([[0.0, 1.0, 1.0, 1.0], [0.0, 1.0, 1.0, 1.0], [1.0, 0.0, 1.0, 1.0], [1.0, 1.0, 0.0, 1.0]])
@given(SCORED)
def test_reliability_knows_no_order_and_stays_below_one(rows: list[list[float]]) -> None:
    found, whole = kr_20(rows), alpha(rows)
    assert (found is None) == (whole is None)
    if found is not None and whole is not None:
        assert found <= 1 + 1e-12
        assert abs(found - whole.value) < 1e-9
        turned = [list(reversed(row)) for row in reversed(rows)]
        assert abs((kr_20(turned) or 0) - found) < 1e-9
        assert whole.interval.low <= whole.value <= whole.interval.high
        # Formula 21 takes all items for equally hard, which can only cost.
        assert (kr_21(rows) or 0) <= found + 1e-9


@settings(max_examples=50, deadline=None)
@given(SCORED)
def test_rasch_orders_items_as_their_shares_do_and_is_centred(rows: list[list[float]]) -> None:
    fits = usable(rows)
    if len(fits.items) < 2 or len(fits.rows) < 2:
        return
    right = [sum(column) for column in zip(*fits.rows, strict=True)]
    ways = [prox(fits.rows)]
    if is_connected(fits.rows):
        ways.append(conditional(fits.rows))
    for found in ways:
        assert abs(sum(one.value for one in found)) < 1e-6
        assert all(one.error > 0 for one in found)
        for (score, one), (other_score, other) in permutations(zip(right, found, strict=True), 2):
            if score == other_score:
                assert abs(one.value - other.value) < 1e-5
            elif score > other_score:
                assert one.value < other.value


@given(st.lists(st.floats(0.1, 3), min_size=1, max_size=8), st.data())
def test_symmetric_functions_are_sums_over_choices(easy: list[float], data: st.DataObject) -> None:
    found = symmetric(easy)
    assert len(found) == len(easy) + 1
    total = 1.0
    for one in easy:
        total *= 1 + one
    assert abs(sum(found) - total) < 1e-9 * total
    place = data.draw(st.integers(0, len(easy) - 1))
    rest = [*without(easy, place), 0.0]
    # With the value put in again each entry is what it was: g(r) = g'(r) + e g'(r - 1).
    joined = [rest[0], *(rest[score] + easy[place] * rest[score - 1] for score in range(1, len(found)))]
    assert all(abs(one - other) < 1e-9 * total for one, other in zip(found, joined, strict=True))


@given(st.integers(1, 300), st.data())
def test_need_grows_with_what_was_missed_and_with_what_is_shared(people: int, data: st.DataObject) -> None:
    missed = data.draw(st.integers(0, people))
    took = data.draw(st.integers(0, missed))
    found = need(missed=missed, people=people, took=took, sure_and_wrong=0)
    assert 0 <= found <= 1.5
    assert found <= need(missed=missed, people=people, took=missed, sure_and_wrong=missed)
    if missed < people:
        assert found < need(missed=missed + 1, people=people, took=took, sure_and_wrong=0)


@given(st.floats(-1, 1), st.integers(0, 60))
def test_verdicts_need_twenty_people(apart: float, people: int) -> None:
    assert (verdict_of(apart, people) is None) == (people < 20)
    assert (verdict_of(apart, 20) == "suspect key") == (round(apart, 9) < 0)
