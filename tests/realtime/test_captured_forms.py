"""All that goes out to seats and wall, of each form a round may have: the same byte for byte whatever the key
is, until its result is shown.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest

from quizroom.questions.model import Item
from quizroom.realtime import wire_json
from quizroom.realtime.alarms import close_rounds_that_are_over, move_groups_on
from quizroom.room.bench_state import BenchRules
from quizroom.room.state import Plan
from tests.realtime.hall import Hall
from tests.realtime.test_captured import Captured, Class
from tests.room.group_histories import group_plan
from tests.room.sample_items import (
    all_formats,
    free_list,
    matching,
    one_best,
    ordering,
    pick_three,
    typed,
)
from tests.room.samples import plan, preparation
from tests.views.twins import other_key

PLAYERS = ("ada", "bo", "cem")
HELD = replace(plan(standings=True), holds_results=True)
AT_BENCHES = replace(plan(standings=True), benches=BenchRules(how="choice"))
AT_STATIONS = replace(
    plan(timing="fixed", standings=True), benches=BenchRules(how="choice", answers=False, stations=True)
)
Play = Callable[[Class], None]


def captured(play: Play, by: Plan, *items: Item) -> Captured:
    """What the seats and the wall of a class hear."""
    room = Class(Hall())
    hall = room.hall
    hall.rooms.handle("room-1", preparation(*items, by=by, host="owner"))
    hall.connect("host", "owner")
    room.say("host", "open_desk", room="room-1")
    room.say("host", "open_door")
    door = hall.room().door_code
    hall.connect("wall")
    room.say("wall", "watch_wall", door_code=door)
    for name in PLAYERS:
        hall.connect(name)
        room.say(name, "enter_seat", door_code=door, handle=name.title(), seat_key=f"key of {name}")
    play(room)
    for name in ("wall", *PLAYERS):
        room.say(name, "show_view")
    return room.frames


def says(room: Class, name: str, turned: int = 0, **more: Any) -> None:
    """A player answers the first round: what is offered, turned by so many places."""
    item = room.hall.room().rounds[0].item
    letters = [option.letter for option in item.options]
    shifted = (letters[turned:] + letters[:turned])[: item.pick]
    choice = shifted if item.format in ("ordering", "matching") else sorted(shifted)
    words = [] if letters else [f"word {turned} {place}" for place in range(item.pick)]
    room.say(name, "submit_answer", round=1, choice=choice, typed=words, id=f"{name} {turned}", **more)
    room.hall.clock.move(1)


def ask(room: Class) -> None:
    room.say("host", "open_round", round=1)
    for turned, name in enumerate(PLAYERS):
        says(room, name, turned)
    says(room, "ada", 2)


def ask_and_close(room: Class) -> None:
    ask(room)
    room.say("host", "close_round", round=1)


def talk(room: Class) -> None:
    ask_and_close(room)
    room.say("host", "let_talk", round=1, seconds=60)
    room.say("host", "open_again", round=1)
    for name in PLAYERS[:2]:
        says(room, name, 1, again=True)
    room.say("host", "close_again", round=1)


def show(room: Class) -> None:
    talk(room)
    room.say("host", "show_result", round=1)


def sit_at_benches(room: Class) -> None:
    for name, bench in zip(PLAYERS, ("Carpal", "Carpal", "Tarsal"), strict=True):
        room.say(name, "take_bench", bench=bench)


def at_benches(room: Class) -> None:
    sit_at_benches(room)
    ask(room)
    room.say("bo", "answer_for_bench", round=1, choice=["C"])


def at_benches_to_the_end(room: Class) -> None:
    at_benches(room)
    room.say("host", "close_round", round=1)


def at_stations(room: Class) -> None:
    sit_at_benches(room)
    room.say("host", "open_stations", round=1)
    for bell in range(3):
        for name in PLAYERS:
            station = room.hall.say(name, "show_view")["own"]["station"]
            if station["item"]:
                letters = [option["letter"] for option in station["item"]["options"]]
                room.say(
                    name,
                    "submit_answer",
                    round=station["item"]["round"],
                    choice=letters[: station["item"]["pick"]],
                    id=f"{name} {bell}",
                )
        room.say("host", "ring_bell", round=bell + 1)


def with_own_time(room: Class) -> None:
    """Ada has twice the time and uses it after the round has closed for the others."""
    hall = room.hall
    ada = next(player.id for player in hall.room().players.values() if player.handle == "Ada")
    room.say("host", "set_time_factor", player=ada, factor_percent=200)
    ask(room)
    closes_at = hall.room().rounds[0].closes_at
    assert closes_at is not None
    hall.clock.move((closes_at - hall.clock.now()).total_seconds() + 1)
    close_rounds_that_are_over(hall.rooms, hall.clock)
    assert hall.room().phase == "closed"
    for turned in range(3):
        says(
            room,
            "ada",
            turned,
        )
    late = hall.say("bo", "submit_answer", round=1, choice=[], typed=[], id="bo late")
    assert late["result"] == "refused"
    room.frames.append(("reply", "bo", wire_json.dumps(late)))


def with_own_time_to_the_end(room: Class) -> None:
    with_own_time(room)
    room.say("host", "show_result", round=1, ends_own_time=True)


def in_a_group(room: Class) -> None:
    """Nobody leads; the round is on until all have answered."""
    for name in PLAYERS:
        room.say(name, "say_ready", round=0)
    move_groups_on(room.hall.rooms, room.hall.clock)
    for turned, name in enumerate(PLAYERS[:2]):
        says(room, name, turned)
    room.say("ada", "ask_pause", round=1)
    room.say("ada", "go_on", round=1)


def twins(items: tuple[Item, ...]) -> tuple[Item, ...]:
    """The same as asked, with other keys."""
    return tuple(other_key(item, 1) for item in items)


def only(item: Item) -> tuple[Item, ...]:
    return item, one_best("ahead")


@pytest.mark.parametrize(
    "item", [*all_formats()], ids=lambda item: item.format if isinstance(item, Item) else str(item)
)
def test_no_byte_of_an_open_or_held_round_depends_on_its_key(item: Item) -> None:
    for play, by in ((ask, plan(standings=True)), (ask_and_close, HELD)):
        heard = captured(play, by, *only(item))
        assert len(heard) > 20
        assert heard == captured(play, by, *twins(only(item)))


@pytest.mark.parametrize("item", [one_best(), pick_three(), ordering(), matching(), typed(), free_list()])
def test_no_byte_of_a_talk_depends_on_the_key_before_the_result_is_shown(item: Item) -> None:
    assert captured(talk, HELD, *only(item)) == captured(talk, HELD, *twins(only(item)))
    assert captured(show, HELD, *only(item)) != captured(show, HELD, *twins(only(item)))


@pytest.mark.parametrize("item", [one_best(), matching(), typed()])
def test_no_byte_depends_on_the_key_while_somebody_has_time_left(item: Item) -> None:
    items = only(item)
    assert captured(with_own_time, HELD, *items) == captured(with_own_time, HELD, *twins(items))
    ends = [captured(with_own_time_to_the_end, HELD, *some) for some in (items, twins(items))]
    assert ends[0] != ends[1]


@pytest.mark.parametrize("item", [one_best(), ordering(), free_list()])
def test_nor_does_any_in_a_group_that_nobody_leads(item: Item) -> None:
    items = only(item)
    assert captured(in_a_group, group_plan(), *items) == captured(in_a_group, group_plan(), *twins(items))


def test_what_a_bench_hands_in_tells_nobody_the_key() -> None:
    items = only(one_best())
    assert captured(at_benches, AT_BENCHES, *items) == captured(at_benches, AT_BENCHES, *twins(items))
    ends = [captured(at_benches_to_the_end, AT_BENCHES, *some) for some in (items, twins(items))]
    assert ends[0] != ends[1]


def test_stations_tell_no_key_at_any_turn() -> None:
    items = (one_best(), pick_three(), one_best("third", "C"))
    heard = captured(at_stations, AT_STATIONS, *items)
    assert len(heard) > 40
    assert heard == captured(at_stations, AT_STATIONS, *twins(items))
