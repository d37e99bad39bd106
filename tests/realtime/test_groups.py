"""Study groups at the gate: opening a room, playing it, and who is missed when a line is gone."""

from typing import Any

import pytest

from quizroom.realtime.alarms import move_groups_on
from quizroom.realtime.broadcast import public_of
from quizroom.realtime.presence import AWAY_AFTER_S, Presence
from quizroom.room.state import Room
from tests.realtime.hall import Hall, hall_with
from tests.room.group_histories import answer_of

ADA, BO = "key of ada, long enough", "key of bo, long enough"


class Evening:
    """A hall with a group in it, watched as the server watches."""

    def __init__(self) -> None:
        """Ada opens a room; Bo comes in."""
        self.hall = Hall()
        self.presence = Presence(self.hall.rooms, self.hall.seats, lambda: self.hall.steady_s)
        self.hall.connect("ada")
        opened = self.hall.say("ada", "open_group", handle="Ada", seat_key=ADA, typed=False)
        self.door: str = opened["public"]["door_code"]
        self.come_in("bo")

    def come_in(self, sid: str, handle: str = "Bo", seat_key: str = BO) -> dict[str, Any]:
        """Somebody takes a seat by a new connection."""
        self.hall.connect(sid)
        return self.hall.say(sid, "enter_seat", door_code=self.door, handle=handle, seat_key=seat_key)

    def come_back(self, sid: str, seat_key: str = BO) -> None:
        """Somebody resumes a seat by a new connection."""
        self.hall.connect(sid)
        self.hall.say(sid, "resume_seat", door_code=self.door, seat_key=seat_key)

    def answer(self, sid: str) -> None:
        """Any answer that fits the open item."""
        choice = answer_of(self.room(), "").choice
        assert self.hall.say(sid, "submit_answer", choice=list(choice))["result"] == "done"

    def wait(self, seconds: float) -> Room:
        """Let time pass, then let the server look after its rooms; the room as it then is."""
        self.hall.clock.move(seconds)
        self.hall.steady_s += seconds
        self.presence.look()
        move_groups_on(self.hall.rooms, self.hall.clock)
        return self.room()

    def room(self) -> Room:
        """The one room there is."""
        return self.hall.rooms.live()[0]

    def begin(self) -> Room:
        """Both are ready."""
        for sid in ("ada", "bo"):
            self.hall.say(sid, "say_ready", round=0)
        return self.wait(0.1)


def away(room: Room) -> list[str]:
    assert room.run is not None
    return [room.players[player].handle for player in room.run.away]


def test_whoever_opens_a_room_is_told_its_door_code_and_is_in_a_seat() -> None:
    evening = Evening()
    hall = evening.hall
    own = hall.say("ada", "show_view")["own"]
    assert own["handle"] == "Ada"
    assert own["group"]["opener"]
    assert [mate["handle"] for mate in own["group"]["mates"]] == ["Bo"]
    bo = hall.say("bo", "show_view")
    assert bo["own"]["group"] == {"ready": False, "opener": False, "mates": []}
    assert bo["public"]["group"]["handles"] == ["Ada", "Bo"]


def test_the_opener_gets_no_desk_and_nobody_else_does() -> None:
    evening = Evening()
    evening.hall.connect("host", "owner")
    room = evening.room().id
    assert evening.hall.say("ada", "open_desk", room=room)["code"] == "not_host"
    assert evening.hall.say("host", "open_desk", room=room)["code"] == "unknown_room"
    assert evening.hall.say("ada", "open_round", round=1)["code"] == "not_host"


def test_a_group_plays_a_round_by_itself() -> None:
    evening = Evening()
    room = evening.begin()
    assert room.phase == "answering"
    for sid in ("ada", "bo"):
        evening.answer(sid)
    assert evening.wait(0.1).phase == "explained"


def test_a_line_that_is_back_within_seconds_is_never_missed() -> None:
    evening = Evening()
    evening.begin()
    evening.hall.gateway.disconnect("bo")
    assert away(evening.wait(AWAY_AFTER_S - 0.1)) == []
    evening.come_back("bo again")
    assert away(evening.wait(AWAY_AFTER_S + 1)) == []


def test_a_player_whose_last_line_has_gone_is_not_waited_for() -> None:
    evening = Evening()
    evening.come_back("second phone of bo")
    evening.begin()
    evening.answer("ada")
    evening.hall.gateway.disconnect("bo")
    assert away(evening.wait(AWAY_AFTER_S + 1)) == []
    evening.hall.gateway.disconnect("second phone of bo")
    evening.wait(1)
    room = evening.wait(AWAY_AFTER_S)
    assert away(room) == ["Bo"]
    assert room.phase == "explained"
    evening.come_back("bo again")
    assert away(evening.wait(0.1)) == []


def test_after_a_start_those_who_do_not_come_back_are_missed() -> None:
    evening = Evening()
    evening.begin()
    for sid in ("ada", "bo"):
        evening.hall.gateway.disconnect(sid)
    started = Presence(evening.hall.rooms, evening.hall.seats, lambda: evening.hall.steady_s)
    started.expect_everybody()
    evening.come_back("ada again", ADA)
    evening.hall.steady_s += AWAY_AFTER_S
    started.look()
    assert away(evening.room()) == ["Bo"]


def test_who_sits_at_another_process_is_not_missed_here() -> None:
    evening = Evening()
    elsewhere = Presence(evening.hall.rooms, Hall().seats, lambda: evening.hall.steady_s)
    evening.hall.steady_s += 100
    elsewhere.look()
    assert away(evening.room()) == []


def test_every_answer_tells_all_pages_who_is_waited_for() -> None:
    evening = Evening()
    evening.begin()
    evening.hall.tell()
    evening.answer("ada")
    told = evening.hall.tell()
    assert ("public", public_of(evening.room().id)) in told
    assert evening.hall.say("bo", "show_view")["public"]["group"]["waited_for"] == 1


def test_a_room_that_cannot_be_stored_to_is_tried_again() -> None:
    evening = Evening()
    for sid in ("ada", "bo"):
        evening.hall.say(sid, "say_ready", round=0)
    evening.hall.log.failures_of[evening.room().id] = RuntimeError("a bug")
    evening.hall.gateway.disconnect("bo")
    assert evening.wait(AWAY_AFTER_S + 1).phase == "gathering"
    evening.hall.log.failures_of.clear()
    assert evening.wait(0.1).phase == "answering"


@pytest.mark.parametrize("kind", ["say_ready", "ask_pause", "go_on", "rename_self", "send_out"])
def test_where_a_host_leads_players_cannot_run_the_review(kind: str) -> None:
    hall = hall_with("ada", "bo")
    fields = {"player": "p2"} if kind == "send_out" else {}
    assert hall.say("ada", kind, **fields)["code"] == "led_by_host"
    assert hall.say("wall", kind, **fields)["code"] == "no_seat"


def test_a_third_group_is_refused_where_two_are_allowed() -> None:
    evening = Evening()
    codes = []
    for sid in ("cem", "dele"):
        evening.hall.connect(sid)
        codes.append(
            evening.hall.say(sid, "open_group", id=sid, seat_key=f"long enough key of {sid}")["code"]
        )
    assert codes == ["", "too_many_groups"]


def test_a_course_list_that_is_not_there_is_refused() -> None:
    hall = Hall()
    hall.connect("ada")
    assert hall.say("ada", "open_group", course="nowhere")["code"] == "unknown_course"


def test_nothing_a_group_is_sent_before_closing_tells_the_key() -> None:
    evening = Evening()
    evening.begin()
    shown = evening.hall.say("ada", "show_view")
    assert shown["desk"] is None
    assert shown["public"]["result"] is None
    assert shown["public"]["records"] == []
