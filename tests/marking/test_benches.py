"""Marks and standings of benches."""

from dataclasses import replace

from quizroom.marking import bench_standings, marks_of_room
from quizroom.room.bench_commands import AnswerForBench, TakeBench
from quizroom.room.bench_state import BenchRules
from quizroom.room.commands import CloseRound, OpenRound, StrikeItem
from quizroom.room.state import Room
from tests.room.sample_items import one_best
from tests.room.samples import gathered, ordered, plan, says, seat

TOGETHER = BenchRules(how="choice", answers=True)
ALONE = BenchRules(how="choice", answers=False)
SEATS = {"ada": "Carpals", "bo": "Carpals", "cem": "Tarsals", "dele": "Tarsals", "esme": "Tarsals"}


def played(rules: BenchRules) -> Room:
    """Ada right, Bo wrong; of the other three only Cem right, Esme silent. Both benches hand in."""
    room = gathered(one_best(), one_best("2"), by=replace(plan(), benches=rules), players=SEATS)
    room = ordered(room, *(TakeBench(player=player, bench=bench) for player, bench in SEATS.items()))
    room = ordered(
        room, OpenRound(round=1), says("ada", "B"), says("bo", "A"), says("cem", "B"), says("dele", "C")
    )
    if rules.answers:
        room = ordered(
            room,
            AnswerForBench(player="ada", round=1, choice=("B",)),
            AnswerForBench(player="dele", round=1, choice=("C",)),
        )
    return ordered(room, CloseRound(round=1, by_host=True))


def standing(room: Room) -> list[tuple[int, str, float, int]]:
    return [(row.place, row.bench, row.marks, row.of) for row in bench_standings(marks_of_room(room))]


def test_a_bench_has_the_marks_of_what_it_handed_in_and_members_keep_their_own() -> None:
    room = played(TOGETHER)
    assert standing(room) == [(1, "Carpals", 1.0, 1), (2, "Tarsals", 0.0, 1)]
    totals = marks_of_room(room).totals
    assert [totals[player].marks for player in SEATS] == [1, 0, 1, 0, 0]


def test_where_benches_hand_in_nothing_they_have_the_mean_of_their_members() -> None:
    assert standing(played(ALONE)) == [(1, "Carpals", 0.5, 1), (2, "Tarsals", 0.3333, 1)]


def test_equal_benches_share_a_place() -> None:
    room = ordered(played(TOGETHER), StrikeItem(round=1))
    assert standing(room) == [(1, "Carpals", 0.0, 0), (1, "Tarsals", 0.0, 0)]


def test_who_came_later_weighs_on_no_earlier_round() -> None:
    room = ordered(played(ALONE), seat("farid"), TakeBench(player="farid", bench="Carpals"))
    assert standing(room)[0] == (1, "Carpals", 0.5, 1)
    room = ordered(room, OpenRound(round=2), says("farid", "B", round_=2), CloseRound(round=2, by_host=True))
    assert standing(room)[0] == (1, "Carpals", 0.8333, 2)


def test_marks_are_the_same_whether_worked_out_at_once_or_step_by_step() -> None:
    room = played(TOGETHER)
    before = marks_of_room(room)
    later = ordered(room, TakeBench(player="cem", bench="Carpals"))
    assert marks_of_room(later, before) == marks_of_room(later)
