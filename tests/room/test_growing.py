"""A growing mapping is a dictionary that nobody can change."""

from hypothesis import given
from hypothesis import strategies as st

from quizroom.room.growing import Growing, with_one

STEPS = st.lists(st.tuples(st.integers(0, 40), st.integers()), max_size=120)


@given(STEPS)
def test_it_holds_what_a_dictionary_would_in_the_same_order(steps: list[tuple[int, int]]) -> None:
    growing, plain = Growing[int, int]({}), dict[int, int]()
    for key, value in steps:
        growing, plain = with_one(growing, key, value), {**plain, key: value}
        assert growing == plain
        assert list(growing.items()) == list(plain.items())
        assert (list(growing), list(growing.values())) == (list(plain), list(plain.values()))
        assert len(growing) == len(plain)
        assert growing[key] == growing.get(key, "none") == value
        assert key in growing
    assert (growing.get(99), growing.get(99, 7)) == (None, 7)
    assert 99 not in growing


@given(STEPS, STEPS)
def test_a_longer_one_leaves_the_shorter_as_it_was(
    first: list[tuple[int, int]], more: list[tuple[int, int]]
) -> None:
    growing = Growing[int, int]({})
    for key, value in first:
        growing = with_one(growing, key, value)
    before = dict(growing)
    longer = growing
    for key, value in more:
        longer = with_one(longer, key, value)
    assert growing == before
    assert longer == {**before, **dict(more)}
