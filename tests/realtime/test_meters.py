"""What is counted, read back by the parser of the metrics' own library (exposition format of Prometheus)."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest
from prometheus_client.parser import text_string_to_metric_families

from quizroom.protocol.replies import Reply
from quizroom.realtime.meters import Meters
from quizroom.realtime.replies import done, failed, refused
from quizroom.realtime.timed_log import TimedLog
from quizroom.service.ports import NotStored
from quizroom.storage.memory import MemoryEventLog
from tests.realtime.hall import hall_with
from tests.room.samples import NOON, gathered
from tests.serving import CHECKOUT
from tests.storage.entries import laid_out


def samples(meters: Meters) -> dict[tuple[str, tuple[tuple[str, str], ...]], float]:
    return {
        (sample.name, tuple(sorted(sample.labels.items()))): sample.value
        for family in text_string_to_metric_families(meters.page().decode())
        for sample in family.samples
    }


def test_replies_and_refusals_are_counted_by_type_and_code() -> None:
    meters = Meters()
    replies: tuple[Reply, ...] = (
        done("1", NOON),
        refused("2", "too_late", NOON),
        refused("3", "too_late", NOON),
        failed("4", "broken", NOON),
    )
    for reply in replies:
        meters.answered("submit_answer", reply, 0.004)
    found = samples(meters)
    assert found["quizroom_refusals_total", (("code", "too_late"),)] == 2
    assert found["quizroom_replies_total", (("result", "done"), ("type", "submit_answer"))] == 1
    assert found["quizroom_replies_total", (("result", "refused"), ("type", "submit_answer"))] == 2
    assert found["quizroom_reply_seconds_count", (("type", "submit_answer"),)] == 4
    assert found["quizroom_reply_seconds_sum", (("type", "submit_answer"),)] == pytest.approx(0.016)


def test_whatever_strangers_make_up_adds_no_label() -> None:
    hall, meters = hall_with("ada"), Meters()
    hall.gateway = replace(hall.gateway, answered=meters.answered)
    for number in range(20):
        hall.gateway.say("ada", {"id": str(number), "type": f"made up {number}", "code": f"made up {number}"})
    hall.gateway.say("ada", None)
    hall.gateway.say("nobody", {"id": "1", "type": "submit_answer"})
    found = samples(meters)
    assert {labels for name, labels in found if name == "quizroom_replies_total"} == {
        (("result", "refused"), ("type", "not read"))
    }
    assert {labels for name, labels in found if name == "quizroom_refusals_total"} == {
        (("code", "bad_message"),),
        (("code", "no_seat"),),
    }


def test_rooms_and_players_are_those_of_now() -> None:
    meters, rooms = Meters(), [gathered(players=("ada", "bo"))]
    meters.watch(rooms=lambda: rooms, connections=lambda: 3)
    found = samples(meters)
    assert found["quizroom_rooms", ()] == 1
    assert found["quizroom_players", ()] == 2
    assert found["quizroom_connections", ()] == 3
    rooms.clear()
    assert samples(meters)["quizroom_players", ()] == 0


def test_only_commits_that_succeed_are_timed() -> None:
    meters, times = Meters(), iter((1.0, 1.25, 2.0, 9.0))
    log = TimedLog(MemoryEventLog(), steady=lambda: next(times), committed=meters.committed)
    log.append([laid_out("r1", at=datetime(2031, 10, 20, tzinfo=UTC))])

    class Full(MemoryEventLog):
        def append(self, entries: object) -> None:
            raise NotStored("disk full")

    with pytest.raises(NotStored):
        TimedLog(Full(), steady=lambda: next(times), committed=meters.committed).append([laid_out("r2")])
    found = samples(meters)
    assert found["quizroom_commit_seconds_count", ()] == 1
    assert found["quizroom_commit_seconds_sum", ()] == pytest.approx(0.25)
    assert found["quizroom_events_total", ()] == 1


def test_every_number_is_in_the_handbook() -> None:
    meters = Meters()
    meters.watch(rooms=tuple, connections=lambda: 0)
    page = (CHECKOUT / "quizroom" / "handbook" / "operations.md").read_text("utf-8")
    kinds = {"counter": "_total"}
    families = text_string_to_metric_families(meters.page().decode())
    for family in (one for one in families if not one.name.endswith("_created")):
        assert f"`{family.name}{kinds.get(family.type, '')}`" in page


def test_nothing_that_is_counted_names_a_person() -> None:
    meters = Meters()
    meters.watch(rooms=lambda: [gathered(players=("Ada Alder",))], connections=lambda: 1)
    assert b"Alder" not in meters.page()
