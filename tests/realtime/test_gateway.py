"""Every message is answered, whatever it is, whoever says it, whatever happens behind."""

from typing import Any

import orjson
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.protocol.sentences import SENTENCES
from quizroom.realtime.door import CREDITS_A_SECOND, MOST_CREDITS
from quizroom.service.ports import NotStored
from tests.protocol.wording import PLAIN, message
from tests.realtime.hall import hall_with


@pytest.mark.parametrize("who", ["host", "ada", "wall", "stranger"])
@pytest.mark.parametrize("kind", PLAIN)
def test_every_message_of_anybody_is_answered_with_its_id(kind: str, who: str) -> None:
    hall = hall_with("ada")
    hall.connect("stranger")
    reply = hall.say(who, kind, id="its-own-id")
    assert reply["id"] == "its-own-id"
    assert reply["result"] in ("done", "refused")
    assert bool(reply["text"]) == bool(reply["code"]) == (reply["result"] == "refused")


@pytest.mark.parametrize("who", ["host", "ada", "stranger"])
@pytest.mark.parametrize("kind", PLAIN)
def test_the_text_of_a_message_is_answered_by_the_text_of_the_same_reply(kind: str, who: str) -> None:
    by_value, by_text = hall_with("ada"), hall_with("ada")
    said = message(kind, id="its-own-id")
    for hall in (by_value, by_text):
        hall.connect("stranger")
    reply = by_text.gateway.say_text(who, orjson.dumps(said))
    assert orjson.loads(reply) == by_value.gateway.say(who, said)


@pytest.mark.parametrize("raw", [None, [], 7, "submit_answer", {"id": "mine"}, {"id": "mine", "type": "x"}])
def test_a_text_that_is_no_message_is_refused_as_the_value_is(raw: Any) -> None:
    hall = hall_with("ada")
    assert orjson.loads(hall.gateway.say_text("ada", orjson.dumps(raw))) == hall.gateway.say("ada", raw)
    assert hall.gateway.say("ada", raw)["code"] == "bad_message"


@pytest.mark.parametrize("text", [b"", b"{", b'{"id":"mine"},7', b"\xff", b"[" * 100_000])
@pytest.mark.parametrize("who", ["ada", "nobody"])
def test_what_is_no_json_is_left_to_the_library(text: bytes, who: str) -> None:
    with pytest.raises(ValueError, match=r".+"):
        hall_with("ada").gateway.say_text(who, text)


@pytest.mark.parametrize(
    "failure,code", [(RuntimeError("a bug"), "broken"), (NotStored("disk full"), "not_stored")]
)
def test_when_something_fails_behind_the_message_is_answered_and_the_line_lives(
    failure: Exception, code: str
) -> None:
    hall = hall_with("ada")
    hall.log.failure = failure
    reply = hall.say("ada", "submit_answer", choice=["B"])
    assert (reply["result"], reply["code"], reply["text"]) == ("failed", code, SENTENCES[code])  # type: ignore[index]  # a code of the sentences
    assert hall.room().rounds[0].answers == {}
    hall.log.failure = None
    assert hall.say("ada", "submit_answer", choice=["B"])["result"] == "done"


@pytest.mark.parametrize("raw", [None, [], 7, "submit_answer", {}, {"type": "submit_answer"}, b"\x00"])
def test_what_cannot_be_read_is_answered_in_a_sentence(raw: Any) -> None:
    hall = hall_with("ada")
    reply = hall.gateway.say("ada", raw)
    assert (reply["id"], reply["result"], reply["code"]) == ("", "refused", "bad_message")
    assert reply["text"].startswith("The server could not read that message. ")
    assert reply["text"].endswith(".")
    assert hall.say("ada", "submit_answer", choice=["B"])["result"] == "done"


def test_a_message_that_comes_as_several_is_read_by_its_first_part() -> None:
    hall = hall_with("ada")
    assert hall.gateway.say("ada", message("probe_time"), "more", b"and more")["result"] == "done"
    assert hall.gateway.say("ada")["code"] == "bad_message"


def test_a_connection_that_is_gone_has_no_seat() -> None:
    hall = hall_with("ada")
    hall.gateway.disconnect("ada", "transport close")
    assert hall.say("ada", "submit_answer", choice=["B"])["code"] == "no_seat"
    assert "p1" in hall.room().players


def test_who_says_too_much_at_once_must_wait_and_is_told_so() -> None:
    hall = hall_with()
    hall.connect("chatty")
    replies = [hall.say("chatty", "probe_time", id=f"m{number}") for number in range(45)]
    refused = [reply for reply in replies if reply["result"] == "refused"]
    assert [reply["code"] for reply in refused] == ["slow_down"] * (45 - int(MOST_CREDITS))
    assert refused[0]["id"] == "m40"
    assert hall.say("host", "probe_time")["result"] == "done"


def test_all_lines_of_one_seat_have_the_credits_of_one() -> None:
    hall = hall_with("ada", "bo")
    door = hall.room().door_code
    for line in ("ada-2", "ada-3"):
        hall.connect(line)
        assert hall.say(line, "resume_seat", door_code=door, seat_key="key of ada")["result"] == "done"
    hall.steady_s += 3600
    said = [hall.say(line, "probe_time")["result"] for line in ("ada", "ada-2", "ada-3") for _ in range(30)]
    assert said.count("done") == MOST_CREDITS
    assert hall.say("bo", "probe_time")["result"] == "done"
    hall.gateway.disconnect("ada", "transport close")
    hall.steady_s += 1
    assert [hall.say("ada-2", "probe_time")["result"] for _ in range(11)].count("done") == CREDITS_A_SECOND


def test_credits_come_back_with_time_but_never_more_than_a_full_purse() -> None:
    hall = hall_with()
    hall.connect("chatty")

    def admitted() -> int:
        return sum(hall.say("chatty", "probe_time")["result"] == "done" for _ in range(60))

    assert admitted() == MOST_CREDITS
    hall.steady_s += 1
    assert admitted() == CREDITS_A_SECOND
    hall.steady_s += 3600
    assert admitted() == MOST_CREDITS


def test_messages_that_cannot_be_read_cost_credits_too() -> None:
    hall = hall_with()
    hall.connect("noisy")
    codes = [hall.gateway.say("noisy", {"id": "m", "type": "noise"})["code"] for _ in range(42)]
    assert codes == ["bad_message"] * 40 + ["slow_down"] * 2


@settings(max_examples=25, deadline=None)
@given(
    st.recursive(
        st.none() | st.integers() | st.text(),
        lambda inner: st.lists(inner) | st.dictionaries(st.text(), inner),
    )
)
def test_any_raw_value_is_answered(raw: Any) -> None:
    hall = hall_with()
    hall.connect("ada")
    assert hall.gateway.say("ada", raw)["result"] == "refused"
