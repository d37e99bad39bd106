"""Stations on the wire: each seat its own bench's item, the bell by the alarm, no time lost in an outage."""

from typing import Any

from quizroom.realtime.alarms import RECONNECT_MS, any_round_is_open, give_back_lost_time, ring_bells
from quizroom.storage.memory import MemoryHeartbeat
from tests.realtime.hall import HOST, Hall
from tests.room.samples import after

BENCH_OF = {"ada": "Carpal", "bo": "Tarsal"}


def station_hall() -> Hall:
    """A host's review, one player at each of two benches, the stations open."""
    hall = Hall()
    hall.connect("host", HOST)
    benches = {"how": "choice", "answers": False, "stations": True}
    hall.say("host", "prepare_review", benches=benches, typed=False, timing="fixed", standings=True)
    hall.say("host", "open_door", round=0)
    door = hall.rooms.live()[0].door_code
    for player, bench in BENCH_OF.items():
        hall.connect(player)
        hall.say(player, "enter_seat", door_code=door, handle=player.title(), seat_key=f"key of {player}")
        hall.say(player, "take_bench", bench=bench)
    assert hall.say("host", "open_stations", round=1)["result"] == "done"
    return hall


def station(hall: Hall, player: str) -> dict[str, Any]:
    seen: dict[str, Any] = hall.say(player, "show_view")["own"]["station"]
    return seen


def answer(hall: Hall, player: str) -> dict[str, Any]:
    item = station(hall, player)["item"]
    letters = [option["letter"] for option in item["options"]][: item["pick"]]
    return hall.say(player, "submit_answer", round=item["round"], choice=letters)


def test_each_seat_sees_the_item_of_its_own_bench_and_the_wall_sees_none() -> None:
    hall = station_hall()
    assert [station(hall, player)["number"] for player in BENCH_OF] == [1, 2]
    assert station(hall, "ada")["item"]["stem"] not in str(hall.say("bo", "show_view"))
    public = hall.say("ada", "show_view")["public"]
    assert (public["phase"], public["item"]) == ("stations", None)
    assert public["stations"]["rows"] == [{"bench": "Carpal", "item": 1}, {"bench": "Tarsal", "item": 2}]


def test_answers_are_counted_and_the_bell_is_told_to_all_at_once() -> None:
    hall = station_hall()
    hall.tell(with_tallies=True)
    assert answer(hall, "ada")["answer_round"] == 1
    assert hall.tell() == []
    hall.tell(with_tallies=True)
    assert hall.say("ada", "show_view")["public"]["answered"] == 1
    assert hall.say("host", "ring_bell", round=1)["result"] == "done"
    assert {(event, to) for event, to in hall.tell() if event == "own"} == {("own", "ada"), ("own", "bo")}
    assert [station(hall, player)["number"] for player in BENCH_OF] == [2, 3]
    assert hall.say("host", "ring_bell", round=1)["result"] == "done"
    assert station(hall, "ada")["number"] == 2


def test_the_alarm_rings_once_the_time_and_its_grace_are_over() -> None:
    hall = station_hall()
    for seconds, turn in ((45, 1), (0.749, 1), (0.001, 2)):
        hall.clock.move(seconds)
        ring_bells(hall.rooms, hall.clock)
        block = hall.rooms.live()[0].stations
        assert block is not None
        assert block.turn == turn


def test_an_outage_costs_a_turn_no_time() -> None:
    hall = station_hall()
    assert any_round_is_open(hall.rooms)
    heartbeat = MemoryHeartbeat()
    hall.clock.move(10)
    heartbeat.beat(hall.clock.now())
    hall.clock.move(30)
    give_back_lost_time(hall.rooms, hall.log, heartbeat, hall.clock)
    block = hall.rooms.live()[0].stations
    assert block is not None
    assert block.closes_at == after(45 + 30 + RECONNECT_MS / 1000)


def test_only_the_host_opens_stations_and_rings() -> None:
    hall = station_hall()
    for kind in ("open_stations", "ring_bell"):
        assert hall.say("ada", kind, round=1)["code"] == "not_host"
