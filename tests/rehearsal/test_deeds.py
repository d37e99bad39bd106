"""What happens within a round of a rehearsal, and when."""

import time
from dataclasses import replace

from quizroom.rehearsal.deeds import Deed, carry_out, deeds_of_round, wait
from quizroom.rehearsal.pace import PACES, Pace
from quizroom.rehearsal.people import Person, Visit, people
from quizroom.rehearsal.seat import SimulatedSeat
from tests.rehearsal.test_skill import ONE_BEST

NOBODY_LISTENS = "http://127.0.0.1:9"
PERSON = Person(handle="Wren Ulna", visit=Visit(), ability=0.0, pace=1.0)


def deeds(person: Person, number: int) -> list[Deed]:
    seat = SimulatedSeat(NOBODY_LISTENS, "CDFHJ", person)
    return deeds_of_round(replace(ONE_BEST, round=number), [seat], pace=PACES["class"], seed=7)


def names(person: Person, number: int) -> list[str]:
    return [getattr(deed.do, "__name__", "") for deed in sorted(deeds(person, number), key=lambda d: d.at_s)]


def test_the_one_who_joins_late_enters_before_answering() -> None:
    late = replace(PERSON, visit=Visit(joins_at=4))
    assert names(late, 3) == []
    assert names(late, 4)[0] == "enter"
    assert len(names(late, 4)) > 1


def test_the_one_who_drops_hands_nothing_in_until_the_return() -> None:
    dropping = replace(PERSON, visit=Visit(drops_at=3, returns_at=5))
    assert names(dropping, 3) == ["drop"]
    assert names(dropping, 4) == []
    assert names(dropping, 5)[0] == "come_back"


def test_nearly_everybody_answers_within_the_round() -> None:
    seats = [SimulatedSeat(NOBODY_LISTENS, "CDFHJ", person) for person in people(100, 3)]
    planned = deeds_of_round(ONE_BEST, seats, pace=PACES["class"], seed=3)
    assert 90 <= len(planned) <= 130
    assert all(0 < deed.at_s <= 24 for deed in planned)


def test_deeds_are_done_in_order_of_time() -> None:
    done: list[int] = []
    planned = [Deed(0.02, lambda: done.append(2)), Deed(0.0, lambda: done.append(1))]
    carry_out(planned, goes_on=lambda: True)
    assert done == [1, 2]


def test_nothing_more_is_done_once_the_round_is_over() -> None:
    done: list[int] = []
    carry_out(
        [Deed(0.0, lambda: done.append(1)), Deed(30.0, lambda: done.append(2))], goes_on=lambda: not done
    )
    assert done == [1]


def test_waiting_ends_when_it_no_longer_goes_on() -> None:
    began = time.monotonic()
    wait(30.0, goes_on=lambda: time.monotonic() - began < 0.05)
    assert time.monotonic() - began < 5


def test_the_paces_leave_time_to_look_only_in_class() -> None:
    def whole(pace: Pace) -> float:
        return pace.gathering_s + 6 * (2 * pace.thinking_s + pace.closed_s + pace.record_s)

    assert whole(PACES["quick"]) < 30
    assert 120 < whole(PACES["class"]) < 600
