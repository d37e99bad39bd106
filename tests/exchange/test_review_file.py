"""A review comes back from its file as it was, by handles alone; the schema says what such a file is."""

import json
from dataclasses import replace
from pathlib import Path
from typing import Any, get_args

import orjson
import pytest
from hypothesis import Phase, given, settings
from jsonschema import Draft202012Validator

from quizroom.analysis.choices import choices_of
from quizroom.exchange.review_file import schema
from quizroom.exchange.review_file.lateness import without_lateness
from quizroom.exchange.review_file.plan import plan_of
from quizroom.exchange.review_file.reading import read_review
from quizroom.exchange.review_file.schema import review_schema
from quizroom.exchange.review_file.steps import Told
from quizroom.exchange.review_file.writing import review_file
from quizroom.marking import marks_of_room
from quizroom.questions.own_dealt import dealt
from quizroom.room.adding import ItemAdded
from quizroom.room.change_commands import FlagItem
from quizroom.room.commands import (
    CloseRound,
    Command,
    EndReview,
    OpenDoor,
    OpenRound,
    RemovePlayer,
    ShowStandings,
    StrikeItem,
)
from quizroom.room.events import Event
from quizroom.room.folding import replay
from quizroom.room.laying_out import prepare
from quizroom.room.rules import decide
from quizroom.room.state import Room, Round
from quizroom.room.talk_events import TwinAdded
from quizroom.room.time_commands import SetTimeFactor, TakeTime, TakeTimeAlways, TimeCommand
from tests.exchange.review_samples import PICTURE, finished, read_back
from tests.questions.lists import REGIONAL, items_of_course, syllabus
from tests.questions.own_samples import DRAWING, best, picked, typed
from tests.room.histories import TALKED, History, Order, histories, talks
from tests.room.refusing import code_of
from tests.room.samples import (
    NOON,
    after,
    folded,
    gathered,
    ordered,
    plan,
    preparation,
    prepared,
    says,
    seat,
)
from tests.room.test_stations import ITEMS, OPEN, OPENING, bell, by_benches

SCHEMA = Path(schema.__file__).parent.with_suffix(".schema.json")
VALIDATOR = Draft202012Validator(json.loads(SCHEMA.read_text("utf-8")))

AS_FOUND = settings(deadline=None, phases=set(Phase) - {Phase.shrink, Phase.explain})
"""A review that fails is told as found: to make it smaller took five minutes, each try a whole review."""


def no_picture(_name: str) -> None:
    return None


def complaints(body: bytes) -> list[str]:
    """What the independent validator says of a file."""
    return [f"{error.json_path}: {error.message}" for error in VALIDATOR.iter_errors(orjson.loads(body))]


def by_handle(room: Room) -> dict[str, Any]:
    """Everything that a review's file is to keep, with handles in place of ids."""
    handles = {player.id: player.handle for player in room.players.values()}
    return {
        "players": sorted((player.handle, player.from_round) for player in room.players.values()),
        "rounds": [_round_by_handle(current, handles) for current in room.rounds],
        "ahead": room.ahead,
        "benches": {handles[player]: bench for player, bench in room.benches.items() if player in handles},
        "twins": room.twins,
        "marks": {handles[player]: total for player, total in marks_of_room(room).totals.items()},
        "dates": (room.prepared_at, room.finished_at, room.standings, room.holds_results),
        "changes": [(one.round, one.kind, one.what, one.at) for one in room.changes if one.round],
    }


def _round_by_handle(current: Round, handles: dict[str, str]) -> Round:
    named: dict[str, Any] = {
        name: {
            handles[player]: value for player, value in getattr(current, name).items() if player in handles
        }
        for name in ("answers", "second_answers")
    }
    gone = len(current.answers) - len(named["answers"])
    return replace(
        current, orders=(), answered_at_closing=current.answered_at_closing * (not gone), flags={}, **named
    )


@settings(AS_FOUND, max_examples=30)
@given(histories() | talks())
def test_a_played_review_comes_back_as_it_was(history: History) -> None:
    room, log = finished(history)
    body = review_file(room, log, no_picture, happened=True)
    there, _ = read_back(read_review(body))
    in_time = replay(without_lateness(log))
    assert in_time is not None
    kept, found = by_handle(in_time), by_handle(there)
    # How many had answered counts those who were sent out since, and time that an outage took from single
    # players, or that they took themselves, stays at home.
    at_home: dict[str, Any] = {
        "answered_at_closing": 0,
        "closes_at": None,
        "times_taken": {},
        "times_taken_again": {},
    }
    for which in (kept, found):
        which["rounds"] = [replace(one, **at_home) for one in which["rounds"]]
    assert all(not one.times_taken and not one.times_taken_again for one in there.rounds)
    assert found == kept
    assert complaints(body) == []


def test_who_was_sent_out_and_came_back_is_told_once() -> None:
    """Hypothesis found it: the file told both seats of Ada, and none of its readers would take them."""
    door: tuple[Command, ...] = (OpenDoor(door_code="CDFHJ"), seat("ada"), seat("bo"), OpenRound(round=1))
    back: tuple[Command, ...] = (says("ada", "A"), RemovePlayer(player="ada"), seat("ada"))
    log = list(prepare("room-1", preparation(), NOON))
    room = replay(log)
    assert room is not None
    for command in (*door, *back, CloseRound(round=1, by_host=True), EndReview()):
        log += (events := decide(room, command, after(9)))
        room = folded(room, events)
    body = review_file(room, log, no_picture, happened=True)
    there, log_there = read_back(read_review(body))
    assert by_handle(there) == by_handle(room)
    assert there.rounds[0].answers == {}
    assert review_file(there, log_there, no_picture, happened=True) == body
    steps = orjson.loads(body)["happened"]["steps"]
    assert [step["event"]["handle"] for step in steps if step["step"] == "SeatTaken"] == ["Bo", "Ada"]


@pytest.mark.parametrize("rounds", [1, 3])
def test_a_twin_behind_an_item_that_came_later_stands_there_behind_it(rounds: int) -> None:
    """Else the answers to the item before it would be marked against the twin."""
    more = [Order(kind, 0, 0, 0, 50.0) for kind in ("open_round", "close_round")]
    added = [Order(kind, 0, 0, 0, 1.0) for kind in ("twin", "add")]
    room, log = finished([*_talked(), *added, *more * (rounds - 1)])
    assert [kind for kind in map(type, log) if kind in (TwinAdded, ItemAdded)] == [TwinAdded, ItemAdded]
    there, _ = read_back(read_review(review_file(room, log, no_picture, happened=True)))
    for one in (room, there):
        items = [*(current.item.id for current in one.rounds), *(item.id for item in one.ahead)]
        assert items[1:3] == ["own-0", "twin-1"]
        assert one.twins == {"twin-1": 1}
        assert len(one.rounds) == rounds


def _talked() -> History:
    return [Order(kind, index % 6, 0, 0, 0.0) for index, kind in enumerate(TALKED)]


@pytest.mark.parametrize(
    "place,more_time",
    [
        (3, SetTimeFactor(player="ada", factor_percent=200)),
        (3, TakeTimeAlways(player="ada", on=True)),
        (4, TakeTime(player="ada", round=1, time=1)),
    ],
)
def test_no_file_tells_who_answered_in_their_own_time(place: int, more_time: TimeCommand) -> None:
    """A class in which a player has more time, given or taken, and answers after the closing."""
    holding = replace(plan(timing="fixed", seconds=40), holds_results=True)
    door, enter, close = OpenDoor(door_code="CDFHJ"), seat("ada"), CloseRound(round=1, by_host=True)
    orders: list[tuple[float, Command]] = [(0, door), (0, enter), (0, seat("bo")), (1, OpenRound(round=1))]
    orders += [(9, says("bo", "A")), (41, close), (75, says("ada", "B")), (90, EndReview())]
    room = replay(log := list(prepare("room-1", preparation(by=holding), NOON)))
    for at, order in [*orders[:place], (1, more_time), *orders[place:]]:
        assert room is not None
        log += (events := decide(room, order, after(at)))
        room = folded(room, events)
    assert room is not None
    steps = orjson.loads(review_file(room, log, no_picture, happened=True))["happened"]["steps"]
    kinds = [step["step"] for step in steps]
    assert kinds[-4:] == ["AnswerAccepted", "AnswerAccepted", "RoundClosed", "ReviewEnded"]
    late = steps[-3]["event"]
    assert (late["player"], late["at"]) == ("Ada", "2031-09-03T12:00:26.964912Z")  # 1 + 40 * 74 / 114 s
    assert "Time" not in "".join(kinds)


@settings(AS_FOUND, max_examples=15)
@given(histories())
def test_a_file_of_a_file_is_the_same_file(history: History) -> None:
    room, log = finished(history)
    body = review_file(room, log, no_picture, happened=True)
    assert review_file(*read_back(read_review(body)), no_picture, happened=True) == body


@settings(AS_FOUND, max_examples=15)
@given(histories())
def test_nothing_in_it_tells_whose_seats_or_whose_review_they_were(history: History) -> None:
    room, log = finished(history)
    body = review_file(room, log, no_picture, happened=True).decode()
    secrets = {player.key_hash for player in room.players.values()} | {"owner", "room-1", "CDFHJ"}
    for player in room.players.values():
        assert f'"player": "{player.id}"' not in body or player.id == player.handle
    assert not [secret for secret in secrets - {""} if f'"{secret}"' in body]


def test_nobody_learns_from_it_who_flagged_what() -> None:
    room = ordered(gathered(), OpenRound(round=1))
    flagged = FlagItem(player="ada", round=1, text="Is it not the radial nerve?")
    log = (*prepare("room-1", preparation(), NOON), *decide(room, flagged, NOON))
    body = review_file(ordered(room, flagged), log, no_picture, happened=True).decode()
    assert "flag" not in body.lower()
    assert "Is it not" not in body


def test_what_was_answered_at_stations_comes_back_as_rounds() -> None:
    log: list[Event] = list(prepare("room-1", preparation(*ITEMS, by=by_benches()), NOON))
    room = replay(log)
    assert room is not None
    for command in (*OPENING, OPEN, says("ada", "B"), bell(1), bell(2), bell(3), EndReview()):
        events = decide(room, command, NOON)
        room, log = folded(room, events), [*log, *events]
    body = review_file(room, log, no_picture, happened=True)
    there, _ = read_back(read_review(body))
    assert by_handle(there)["marks"] == by_handle(room)["marks"]
    assert [sorted(one.choice for one in current.answers.values()) for current in there.rounds] == [
        [("B",)],
        [],
        [],
    ]
    assert complaints(body) == []


def test_plan_and_items_alone_make_the_same_items() -> None:
    items = tuple(
        replace(dealt(own, f"i{place}", syllabus(REGIONAL), 1), records=())
        for place, own in enumerate((best(), picked(), typed()))
    )
    room = prepared(*items, *items_of_course(REGIONAL)[::400])
    body = review_file(room, (), {DRAWING.name: PICTURE}.get, happened=False)
    assert complaints(body) == []
    review = read_review(body)
    assert review.file.happened is None
    unnamed = [replace(item, picture=None) for item in review.file.items]
    assert unnamed == [replace(item, picture=None) for item in room.ahead]
    assert [item.picture.name for item in review.file.items if item.picture] == ["picture-1"]
    assert review.pictures["picture-1"].width == 64
    there = plan_of(review.file, capacity=500, imported=False)
    assert replace(there, rounds=room.plan.rounds) == room.plan


def test_a_picture_goes_through_any_number_of_files_without_loss() -> None:
    item = dealt(best(), "i1", syllabus(REGIONAL), 1)
    first = read_review(review_file(prepared(item), (), {DRAWING.name: PICTURE}.get, happened=False))
    kept = first.pictures["picture-1"].body
    again = prepared(*first.file.items)
    second = read_review(review_file(again, (), {"picture-1": kept}.get, happened=False))
    assert second.pictures["picture-1"].body == kept


def test_a_picture_that_is_gone_leaves_an_item_without_one() -> None:
    item = dealt(best(), "i1", syllabus(REGIONAL), 1)
    review = read_review(review_file(prepared(item), (), no_picture, happened=False))
    assert [one.picture for one in review.file.items] == [None]


def test_what_happened_goes_along_only_if_wished_and_only_once_the_review_is_over() -> None:
    room = gathered()
    assert read_review(review_file(room, (), no_picture, happened=True)).file.happened is None
    room, log = finished([])
    assert read_review(review_file(room, log, no_picture, happened=False)).file.happened is None
    assert read_review(review_file(room, log, no_picture, happened=True)).file.happened is not None


def test_the_published_schema_is_that_of_the_classes() -> None:
    assert json.loads(SCHEMA.read_text("utf-8")) == review_schema()
    Draft202012Validator.check_schema(review_schema())


@pytest.mark.parametrize("without", ["format", "version", "plan", "items", "pictures", "happened"])
def test_the_schema_itself_refuses_what_lacks_a_part(without: str) -> None:
    file = orjson.loads(review_file(prepared(), (), no_picture, happened=False))
    del file[without]
    assert complaints(orjson.dumps(file))


def test_of_each_kind_of_event_it_is_decided_whether_a_file_tells_it() -> None:
    decided = {kind.__name__ for kind in get_args(Told)} | AT_HOME | {"SeatEntered"}
    assert decided == {kind.__name__ for kind in get_args(Event)}


AT_HOME = {
    # what the items in their last order say already
    *("ReviewPrepared", "ItemSwapped", "ItemAdded", "ItemDropped", "ItemMoved"),
    # what plan and seats say already
    *("ReviewRenamed", "ReviewChanged", "PlayerRenamed", "PlayerRemoved"),
    # doors, keys, rosters, whose review it is: of this server alone
    *("DoorOpened", "SeatLinked", "PlayerForgotten", "ReviewHandedOver"),
    *("EntryClaimed", "ClaimMissed", "EntryAssigned", "RosterSet"),
    # who has more time is for nobody else to know
    *("TimeFactorSet", "TimeLinkMade", "OwnTimeReturned", "TimeTaken", "AlwaysTimeSet"),
    # who flagged what is for nobody to know
    *("ItemFlagged", "FlagTakenBack", "FlagsSettled"),
    # stations stand there as rounds
    *("StationsOpened", "StationAnswered", "BellRung", "StationTimeAdded", "StationShown"),
    # how a group ran by itself
    *("PlayerReady", "PauseAsked", "PauseEnded", "PlayerLeft", "PlayerReturned"),
}


def test_an_imported_review_is_only_looked_at() -> None:
    there, _ = read_back(read_review(review_file(*finished([]), no_picture, happened=True)))
    assert there.plan.imported
    assert code_of(there, StrikeItem(round=1)) == "imported"
    assert code_of(there, ShowStandings(on=True)) == "imported"
    assert choices_of(there) == ()
