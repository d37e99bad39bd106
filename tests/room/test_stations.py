"""Benches start at different items, move on at the bell, and see results when the block is over."""

from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.marking import marks_of_room
from quizroom.questions.model import Item
from quizroom.room.bench_commands import AnswerForBench, TakeBench
from quizroom.room.bench_state import BenchRules
from quizroom.room.commands import (
    AddTime,
    Command,
    DropItem,
    EndReview,
    GiveBackTime,
    OpenDoor,
    OpenRound,
    PauseRound,
    RemovePlayer,
    ShowRecord,
    SubmitAnswer,
)
from quizroom.room.events import Event
from quizroom.room.folding import replay
from quizroom.room.laying_out import prepare
from quizroom.room.own_time import can_keep_own_time
from quizroom.room.owner_commands import ForgetPlayer
from quizroom.room.owner_events import PlayerForgotten
from quizroom.room.owners import redacted
from quizroom.room.rules import decide
from quizroom.room.state import Plan, Room
from quizroom.room.station_commands import OpenStations, RingBell
from quizroom.room.station_events import BellRung, StationTimeAdded
from quizroom.room.stations import a_clock_may_run, is_due
from quizroom.storage.event_codec import read_event, write_event
from quizroom.views.desk import desk_view
from quizroom.views.desk_actions import desk_actions
from quizroom.views.own import own_view
from quizroom.views.public import public_view
from tests.room.refusing import code_of
from tests.room.sample_items import matching, one_best, ordering, pick_three, typed
from tests.room.samples import NOON, after, folded, gathered, ordered, plan, preparation, says, seat, writes
from tests.views.twins import other_key, told_to_all, told_to_wall

BENCHES = {"ada": "Carpal", "bo": "Carpal", "cem": "Tarsal"}
ITEMS = (one_best("1"), pick_three("2"), typed("3"))
OPEN = OpenStations(round=1)
OPENING: tuple[Command, ...] = (
    OpenDoor(door_code="CDFHJ"),
    *(seat(player) for player in BENCHES),
    *(TakeBench(player=player, bench=bench) for player, bench in BENCHES.items()),
)


def by_benches(*, timing: str = "fixed", answers: bool = False, stations: bool = True) -> Plan:
    rules = BenchRules(how="choice", answers=answers, stations=stations)
    return replace(plan(timing=timing), benches=rules)


def at_benches(*items: Item, by: Plan | None = None) -> Room:
    room = gathered(*(items or ITEMS), by=by or by_benches(), players=BENCHES)
    return ordered(room, *(TakeBench(player=player, bench=bench) for player, bench in BENCHES.items()))


def opened(*items: Item, by: Plan | None = None) -> Room:
    return ordered(at_benches(*items, by=by), OPEN)


def bell(turn: int) -> RingBell:
    return RingBell(turn=turn, by_host=True)


def stem(room: Room, player: str) -> str | None:
    station = own_view(room, player, marks_of_room(room), NOON).station
    return None if station is None else station.item.stem


def table(room: Room) -> list[tuple[str, int]]:
    face = public_view(room, marks_of_room(room), NOON).stations
    assert face is not None
    return [(row.bench, row.item) for row in face.rows]


def played() -> Room:
    """All three turns, each player right at every item but Cem at the first that Tarsal meets."""
    room = ordered(opened(), says("ada", "B"), says("bo", "B"), says("cem", "B", round_=2), bell(1))
    room = ordered(
        room, says("ada", "A", "C", "E", round_=2), writes("cem", "axillary nerve", round_=3), bell(2)
    )
    return ordered(room, writes("ada", "axillary nerve", round_=3), says("cem", "B", round_=1), bell(3))


def test_each_bench_starts_at_another_item_and_all_move_on_at_the_bell() -> None:
    room = opened()
    assert table(room) == [("Carpal", 1), ("Tarsal", 2)]
    assert [stem(room, player) for player in BENCHES] == [ITEMS[0].stem, ITEMS[0].stem, ITEMS[1].stem]
    assert table(ordered(room, bell(1))) == [("Carpal", 2), ("Tarsal", 3)]
    assert table(ordered(room, bell(1), bell(2))) == [("Carpal", 3), ("Tarsal", 1)]
    over = ordered(room, bell(1), bell(2), bell(3)).stations
    assert over is not None
    assert over.over


def test_a_player_answers_the_item_of_the_own_bench_and_no_other_until_the_bell() -> None:
    room = opened()
    assert code_of(room, says("ada", "A", "C", "E", round_=2)) == "too_late"
    answered = ordered(room, says("ada", "B"))
    assert decide(answered, says("ada", "B"), NOON) == ()
    moved = ordered(answered, bell(1))
    assert decide(moved, says("ada", "B"), NOON) == ()
    assert code_of(moved, says("ada", "C")) == "too_late"
    assert code_of(moved, says("ada", "B", round_=4)) == "no_such_round"
    assert code_of(moved, says("ada", "E", "F", round_=2)) == "bad_choice"


def test_nothing_of_an_item_is_told_to_all_and_marks_stand_still_until_it_is_shown() -> None:
    room = ordered(opened(), says("ada", "B"), bell(1))
    told = told_to_wall(room).decode()
    assert not any(
        text in told for item in ITEMS for text in (item.stem, *(one.text for one in item.options))
    )
    view = public_view(room, marks_of_room(room), NOON)
    assert (view.item, view.result, view.records, view.standings) == (None, None, (), None)
    assert marks_of_room(room).totals["ada"].of == 0


def test_afterwards_items_are_shown_one_by_one_as_rounds_that_are_answered_and_closed() -> None:
    room = played()
    assert desk_actions(room)[0] == "open_round"
    first = ordered(room, OpenRound(round=1))
    assert (first.phase, first.rounds[0].item, first.rounds[0].closed_at) == ("closed", ITEMS[0], NOON)
    result = public_view(first, marks_of_room(first), NOON).result
    assert result is not None
    assert (result.answered, result.of, result.mean_mark) == (3, 3, 1.0)
    shown = ordered(first, ShowRecord(round=1), OpenRound(round=2), OpenRound(round=3))
    assert shown.stations is None
    assert [marks_of_room(shown).totals[player].marks for player in BENCHES] == [3, 1, 2]
    assert code_of(shown, OpenRound(round=4)) == "no_items_left"


def test_benches_hand_in_together_at_their_station_after_each_member_alone() -> None:
    room = opened(by=by_benches(answers=True))
    together = AnswerForBench(player="ada", round=1, choice=("B",))
    assert code_of(room, together) == "first_alone"
    handed = ordered(room, says("ada", "B"), together)
    assert decide(handed, together, NOON) == ()
    assert code_of(handed, says("bo", "C")) == "bench_has_answered"
    own = own_view(handed, "bo", marks_of_room(handed), NOON).bench
    assert own is not None
    assert own.answer is not None
    assert (own.answered_alone, own.answer.choice, own.mark) == (1, ("B",), None)
    shown = ordered(handed, bell(1), bell(2), bell(3), OpenRound(round=1))
    assert marks_of_room(shown).rounds[0].bench_marks == {"Carpal": 1}


def test_a_bell_repeated_is_harmless_and_the_alarm_rings_only_in_time() -> None:
    room = opened()
    assert decide(ordered(room, bell(1)), bell(1), NOON) == ()
    assert code_of(room, bell(2)) == "not_answering"
    alarm = RingBell(turn=1, by_host=False)
    assert code_of(room, alarm, after(45)) == "too_early"
    (rung,) = decide(room, alarm, after(45.75))
    assert isinstance(rung, BellRung)
    assert (rung.cause, rung.closes_at) == ("time", after(45.75 + 45))
    assert code_of(room, says("ada", "B"), after(46)) == "too_late"


def test_a_turn_is_as_long_as_its_longest_item_and_may_be_lengthened_or_untimed() -> None:
    room = opened(
        replace(ITEMS[0], seconds=20), replace(ITEMS[1], seconds=70), by=by_benches(timing="computed")
    )
    assert room.stations is not None
    assert room.stations.limit_ms == 70_000
    longer = ordered(room, AddTime(seconds=15, order="m1"))
    assert decide(longer, AddTime(seconds=15, order="m1"), NOON) == ()
    assert not is_due(longer, after(85))
    assert is_due(longer, after(85.75))
    given = decide(room, GiveBackTime(ms=3000), NOON)
    assert given == (StationTimeAdded(ms=3000, cause="outage", order=""),)
    assert code_of(room, PauseRound(round=0)) == "not_answering"
    untimed = opened(by=by_benches(timing="untimed"))
    assert not is_due(untimed, after(9999))
    assert code_of(untimed, AddTime(seconds=15, order="m2")) == "bad_time"


@pytest.mark.parametrize(
    "room,code",
    [
        (at_benches(by=by_benches(stations=False)), "no_stations"),
        (gathered(*ITEMS), "no_stations"),
        (at_benches(one_best()), "no_items_left"),
        (ordered(at_benches(), OpenRound(round=1)), None),
    ],
)
def test_stations_are_opened_only_where_they_were_planned(room: Room, code: str | None) -> None:
    assert code_of(room, OPEN) == code
    if code is None:  # round 1 is open already: the order was carried out, or has come too late
        assert decide(room, OPEN, NOON) == ()
        assert code_of(room, OpenStations(round=2)) == "wrong_phase"


def test_nobody_has_more_time_alone_where_all_move_on_together() -> None:
    assert not can_keep_own_time(by_benches())
    assert can_keep_own_time(by_benches(stations=False))


def test_while_stations_are_open_no_round_opens_and_no_item_is_taken_away() -> None:
    room = opened()
    assert code_of(room, OpenRound(round=1)) == "round_is_open"
    assert decide(room, OPEN, NOON) == ()
    assert decide(room, DropItem(position=0, item="1"), NOON) == ()
    assert desk_actions(room) == ("ring_bell", "add_time", "end_review")
    assert a_clock_may_run(room)
    assert not a_clock_may_run(ordered(room, bell(1), bell(2), bell(3)))


def test_who_comes_later_joins_behind_the_stations() -> None:
    room = ordered(opened(), seat("dele"))
    assert room.players["dele"].from_round == 4
    assert stem(room, "dele") is None
    assert code_of(room, says("dele", "B", round_=3)) == "no_such_round"


def test_whoever_sits_at_no_bench_goes_behind_the_last_one() -> None:
    room = ordered(at_benches(), TakeBench(player="bo", bench=""), OPEN)
    assert stem(room, "bo") == ITEMS[2].stem


def test_more_benches_than_items_share_stations() -> None:
    room = ordered(at_benches(ITEMS[0], ITEMS[1]), TakeBench(player="bo", bench="Hamate"), OPEN)
    assert table(room) == [("Carpal", 1), ("Tarsal", 2), ("Hamate", 1)]


def test_ending_keeps_and_marks_what_was_answered() -> None:
    room = ordered(opened(), says("ada", "B"), EndReview())
    assert (room.phase, len(room.rounds)) == ("finished", 3)
    assert marks_of_room(room).totals["ada"].marks == 1


def test_a_removed_player_takes_the_answers_along() -> None:
    room = ordered(played(), RemovePlayer(player="cem"), OpenRound(round=1))
    assert set(room.rounds[0].answers) == {"ada", "bo"}


def test_of_a_forgotten_player_only_terms_stay_in_the_room_and_in_the_log() -> None:
    said = "I am Cem Clover"
    log: list[Event] = list(prepare("room-1", preparation(*ITEMS, by=by_benches()), NOON))
    room = replay(log)
    assert room is not None
    orders: list[Command] = [*OPENING, OPEN, bell(1), writes("cem", said, round_=3)]
    for command in orders:
        events = decide(room, command, NOON)
        room, log = folded(room, events), [*log, *events]
    (deed,) = decide(room, ForgetPlayer(player="cem"), NOON)
    assert isinstance(deed, PlayerForgotten)
    past = redacted(log, deed)
    assert said.encode() not in b"".join(map(write_event, past))
    assert replay([*past, deed]) == folded(room, [deed])


def test_events_of_stations_come_back_from_storage_and_give_the_same_room() -> None:
    log: list[Event] = list(prepare("room-1", preparation(*ITEMS, by=by_benches()), NOON))
    room = replay(log)
    assert room is not None
    for command in (*OPENING, OPEN, says("ada", "B"), bell(1), bell(2), bell(3), OpenRound(round=1)):
        events = decide(room, command, NOON)
        room, log = folded(room, events), [*log, *events]
    assert replay([read_event(write_event(event)) for event in log]) == room
    assert [item.state for item in desk_view(room, marks_of_room(room), NOON).items] == ["closed"] * 3


Move = tuple[str, int, int]


@settings(max_examples=40, deadline=None)
@given(st.lists(st.tuples(st.sampled_from(("bell", *BENCHES)), st.integers(0, 30), st.integers(0, 3))))
def test_while_benches_walk_no_view_depends_on_any_key_and_every_bench_meets_every_item_once(
    moves: list[Move],
) -> None:
    items = (one_best("1"), pick_three("2"), ordering("3"), matching("4"))
    room, met = opened(*items), {bench: [place] for bench, place in table(opened(*items))}
    for who, what, _ in moves:
        command = step(room, who, what)
        before = room
        room = room if code_of(room, command) else folded(room, decide(room, command, NOON))
        assert room.stations is not None
        if not room.stations.over:
            twins = tuple(other_key(item, 1) for item in room.stations.items)
            twin = replace(room, stations=replace(room.stations, items=twins))
            assert told_to_all(twin) == told_to_all(room)
            if table(room) != table(before):
                for bench, place in table(room):
                    met[bench].append(place)
    assert all(len(set(places)) == len(places) for places in met.values())
    assert all((two - one) % len(items) == 1 for places in met.values() for one, two in pairwise(places))


def step(room: Room, who: str, what: int) -> Command:
    """A bell, or an answer of somebody to what is there."""
    block = room.stations
    assert block is not None
    if who == "bell":
        return RingBell(turn=block.turn, by_host=True)
    item = block.items[place := block.place_of(BENCHES[who])]
    letters = [option.letter for option in item.options]
    turned = [*letters[what % 4 :], *letters[: what % 4]][: item.pick]
    return SubmitAnswer(player=who, round=block.first + place, choice=tuple(turned))
