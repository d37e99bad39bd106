"""Benches: who sits where, and what a bench hands in together."""

from collections import Counter
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.room.bench_commands import AnswerForBench, DrawBenches, SeatAtBench, TakeBench
from quizroom.room.bench_state import BenchRules
from quizroom.room.benches import drawn, members, names
from quizroom.room.clock import limit_ms
from quizroom.room.commands import CloseRound, Command, OpenRound, RemovePlayer
from quizroom.room.group import due_step, waited_for
from quizroom.room.group_commands import LeaveSeat, SayReady
from quizroom.room.rules import decide
from quizroom.room.state import Plan, Room
from tests.room.group_histories import gathered_group, group_plan
from tests.room.refusing import code_of
from tests.room.sample_items import one_best
from tests.room.samples import NOON, after, answering, gathered, ordered, plan, says, seat

CHOICE = BenchRules(how="choice")
DRAWN = BenchRules(how="drawn")
CLASS = ("ada", "bo", "cem", "dele", "esme", "farid")


def bench_plan(rules: BenchRules = CHOICE) -> Plan:
    return replace(plan(), benches=rules)


def at_benches(room: Room) -> Room:
    """Ada and Bo at one bench, Cem at another."""
    takes = (("ada", "Carpals"), ("bo", "Carpals"), ("cem", "Tarsals"))
    return ordered(room, *(TakeBench(player=player, bench=bench) for player, bench in takes))


def playing(rules: BenchRules = CHOICE) -> Room:
    """The same, with the first round open."""
    room = at_benches(gathered(one_best(), one_best("2"), by=bench_plan(rules), players=("ada", "bo", "cem")))
    return ordered(room, OpenRound(round=1))


def together(player: str, *letters: str) -> AnswerForBench:
    return AnswerForBench(player=player, round=1, choice=letters)


def test_players_take_benches_by_name_in_any_case_and_leave_them() -> None:
    room = ordered(
        at_benches(gathered(by=bench_plan(), players=CLASS)), TakeBench(player="dele", bench=" carpals ")
    )
    assert names(room) == ("Carpals", "Tarsals")
    assert members(room, "Carpals") == ("ada", "bo", "dele")
    assert names(ordered(room, TakeBench(player="cem", bench=""))) == ("Carpals",)


def test_the_host_moves_players_also_where_benches_are_drawn() -> None:
    room = ordered(gathered(by=bench_plan(DRAWN), players=CLASS), DrawBenches(seed=1))
    assert code_of(room, TakeBench(player="ada", bench="Bench 2")) == "benches_drawn"
    moved = ordered(room, SeatAtBench(player="ada", bench="Bench 2"))
    assert "ada" in members(moved, "Bench 2")


def test_who_is_sent_out_leaves_the_bench_too() -> None:
    room = ordered(at_benches(gathered(by=bench_plan(), players=CLASS)), RemovePlayer(player="cem"))
    assert names(room) == ("Carpals",)


@given(st.integers(6, 200), st.integers(3, 6), st.integers(0, 9))
def test_drawn_benches_hold_three_to_six_and_differ_by_one_at_most(
    players: int, size: int, seed: int
) -> None:
    seats = drawn([f"p{number}" for number in range(players)], size=size, seed=seed)
    sizes = Counter(seat.bench for seat in seats).values()
    assert len({seat.player for seat in seats}) == players
    assert 3 <= min(sizes) <= max(sizes) <= 6
    assert max(sizes) - min(sizes) <= 1


def test_the_same_draw_again_changes_nothing_and_another_seed_draws_anew() -> None:
    room = ordered(gathered(by=bench_plan(DRAWN), players=CLASS), DrawBenches(seed=1))
    assert decide(room, DrawBenches(seed=1), NOON) == ()
    assert {ordered(room, DrawBenches(seed=seed)).benches["ada"] for seed in range(9)} == {
        "Bench 1",
        "Bench 2",
    }


def test_where_nobody_has_drawn_it_is_done_when_the_first_round_opens_and_who_is_late_fills_up() -> None:
    room = ordered(gathered(by=bench_plan(DRAWN), players=CLASS[:5]), OpenRound(round=1))
    assert set(room.benches) == set(CLASS[:5])
    late = ordered(room, seat("farid"))
    assert {len(members(late, bench)) for bench in names(late)} <= {3, 6}


def test_a_bench_hands_in_after_a_member_has_answered_alone() -> None:
    room = playing()
    assert code_of(room, together("ada", "B")) == "first_alone"
    room = ordered(room, says("ada", "A"), together("ada", "B"))
    assert room.rounds[0].bench_answers["Carpals"].choice == ("B",)
    assert room.rounds[0].answers["ada"].choice == ("A",)


def test_once_the_bench_has_handed_in_no_member_changes_the_own_answer() -> None:
    room = ordered(playing(), says("ada", "A"), together("ada", "B"))
    assert code_of(room, says("ada", "B")) == "bench_has_answered"
    assert code_of(room, says("bo", "B")) == "bench_has_answered"
    assert decide(room, says("ada", "A"), NOON) == ()
    assert ordered(room, says("cem", "C")).rounds[0].answers["cem"].choice == ("C",)


def test_another_member_may_hand_in_anew_and_a_repeat_changes_nothing_even_after_closing() -> None:
    room = ordered(playing(), says("ada", "A"), says("bo", "B"), together("ada", "A"), together("bo", "B"))
    assert room.rounds[0].bench_answers["Carpals"].choice == ("B",)
    closed = ordered(room, CloseRound(round=1, by_host=True))
    assert decide(closed, together("bo", "B"), NOON) == ()
    assert code_of(closed, together("bo", "C")) == "too_late"


@pytest.mark.parametrize(
    "room,command,code",
    [
        (answering(), TakeBench(player="ada", bench="Carpals"), "no_benches"),
        (answering(), together("ada", "A"), "no_benches"),
        (playing(replace(CHOICE, answers=False)), together("ada", "A"), "no_benches"),
        (ordered(playing(), TakeBench(player="cem", bench="")), together("cem", "A"), "no_benches"),
        (playing(), TakeBench(player="ada", bench="?!"), "bad_bench"),
        (playing(), TakeBench(player="ada", bench="x" * 25), "bad_bench"),
        (playing(), TakeBench(player="zoe", bench="Carpals"), "no_such_player"),
        (playing(), DrawBenches(seed=1, by="ada"), "not_opener"),
        (ordered(playing(), says("ada", "A")), together("ada", "A", "B"), "bad_choice"),
    ],
)
def test_what_a_bench_cannot_do_is_refused(room: Room, command: Command, code: str) -> None:
    assert code_of(room, command) == code


def test_where_benches_hand_in_a_round_with_a_clock_is_longer_by_the_time_to_talk() -> None:
    alone, paired = (
        plan(timing="fixed", seconds=45),
        replace(plan(timing="fixed", seconds=45), benches=CHOICE),
    )
    assert (limit_ms(alone, one_best()), limit_ms(paired, one_best())) == (45_000, 105_000)
    assert limit_ms(replace(paired, benches=replace(CHOICE, answers=False)), one_best()) == 45_000


def group_at_benches() -> Room:
    """A group whose first round is open: Ada and Bo at one bench, Cem at another."""
    room = at_benches(gathered_group(replace(group_plan(), benches=CHOICE)))
    room = ordered(room, *(SayReady(player=player, round=0) for player in ("ada", "bo", "cem")))
    return ordered(room, OpenRound(round=1))


def test_a_group_waits_for_its_benches_too() -> None:
    room = ordered(group_at_benches(), says("ada", "A"), says("bo", "B"), says("cem", "B"))
    assert waited_for(room) == ("ada", "bo", "cem")
    room = ordered(room, together("bo", "B"))
    assert (waited_for(room), due_step(room, after(1))) == (("cem",), None)
    assert due_step(ordered(room, together("cem", "B")), after(1)) == "close_round"


def test_a_group_does_not_wait_for_who_cannot_answer_since_the_bench_has_handed_in() -> None:
    room = ordered(group_at_benches(), says("ada", "A"), together("ada", "A"))
    assert code_of(room, says("bo", "B")) == "bench_has_answered"
    assert (waited_for(room), due_step(room, after(1))) == (("cem",), None)
    done = ordered(room, says("cem", "B"), together("cem", "B"))
    assert due_step(done, after(1)) == "close_round"


def test_a_group_does_not_wait_for_a_bench_that_has_left() -> None:
    room = ordered(group_at_benches(), says("ada", "A"), says("bo", "B"), together("bo", "B"))
    assert due_step(ordered(room, LeaveSeat(player="cem")), after(1)) == "close_round"


def test_the_opener_of_a_group_may_draw() -> None:
    room = gathered_group(replace(group_plan(), benches=DRAWN))
    assert code_of(room, DrawBenches(seed=1, by="bo")) == "not_opener"
    assert set(ordered(room, DrawBenches(seed=1, by="ada")).benches) == {"ada", "bo", "cem"}
