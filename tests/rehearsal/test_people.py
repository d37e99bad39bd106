"""The invented people of a rehearsal."""

from hypothesis import given
from hypothesis import strategies as st

from quizroom.realtime.handle_filter import reads_rudely
from quizroom.rehearsal.people import AWKWARD, MOST_PEOPLE, Visit, people
from quizroom.room.handles import LONGEST_HANDLE, is_good_handle, same_handle, tidy_handle

NUMBERS = st.integers(1, MOST_PEOPLE)
SEEDS = st.integers(0, 2**31 - 1)


@given(NUMBERS, SEEDS)
def test_so_many_come_as_were_asked_for_and_always_the_same_ones(number: int, seed: int) -> None:
    assert len(people(number, seed)) == number
    assert people(number, seed) == people(number, seed)


@given(NUMBERS)
def test_at_most_half_are_awkward(number: int) -> None:
    awkward = {handle for handle, _ in AWKWARD}
    assert sum(person.handle in awkward for person in people(number, 1)) * 2 <= number


def test_every_handle_is_taken_as_it_stands_and_no_two_are_alike() -> None:
    handles = [person.handle for person in people(MOST_PEOPLE, 1)]
    assert [handle for handle in handles if tidy_handle(handle) != handle or not is_good_handle(handle)] == []
    assert not any(same_handle(one, two) for one in handles for two in handles if one is not two)


def test_the_servers_own_filter_lets_every_one_of_them_in() -> None:
    assert [person.handle for person in people(MOST_PEOPLE, 1) if reads_rudely(person.handle)] == []


def test_a_class_of_twenty_four_holds_every_awkward_case() -> None:
    everybody = people(24, 232)
    handles = " ".join(person.handle for person in everybody)
    assert max(len(person.handle) for person in everybody) == LONGEST_HANDLE
    assert any("\u4e00" <= letter <= "\u9fff" for letter in handles), "a handle in Chinese characters"
    assert any("\u0600" <= letter <= "\u06ff" for letter in handles), "a handle that runs from right to left"
    visits = {person.visit for person in everybody}
    assert {Visit(joins_at=4), Visit(drops_at=3, returns_at=5)} <= visits
    assert sum(person.has_second_device for person in everybody) == 1


def test_who_drops_at_round_three_is_away_in_round_four_and_back_in_round_five() -> None:
    visit = Visit(drops_at=3, returns_at=5)
    assert [visit.is_in(number) for number in range(1, 7)] == [True, True, True, False, True, True]


def test_who_joins_at_round_four_is_not_there_before() -> None:
    assert [Visit(joins_at=4).is_in(number) for number in range(1, 7)] == [
        False,
        False,
        False,
        True,
        True,
        True,
    ]
