"""What really goes over the lines of seats and wall before a round is closed."""

import json
from collections.abc import Iterable, Iterator
from typing import Any

import pytest

from tests.live.lesson import PLAYERS, Lesson, gathered
from tests.live.voices import Voice
from tests.serving import Server

TELLING_FIELDS = {
    "is_key",
    "reason",
    "reasons",
    "why",
    "key",
    "key_text",
    "source",
    "facts",
    "accepted",
    "near",
}


@pytest.fixture
def lesson(server: Server) -> Iterator[Lesson]:
    """A class that will be asked in every format."""
    lesson = gathered(server, course="upper_limb_regional", rounds=6, typed=True)
    yield lesson
    lesson.hang_up()


def fields_in(value: Any) -> set[str]:
    """The names of all fields that hold something, at any depth."""
    if isinstance(value, dict):
        held = {name for name, inner in value.items() if inner not in (None, [], "")}
        return held.union(*map(fields_in, value.values()))
    return set().union(*map(fields_in, value)) if isinstance(value, list) else set()


def said_to(voices: list[Voice]) -> list[Any]:
    """Everything that these connections have heard, and forget it."""
    heard = [data for voice in voices for _, data in voice.heard]
    for voice in voices:
        voice.heard.clear()
    return heard


def secrets_of(item: dict[str, Any]) -> list[str]:
    """Texts of an item that only its record or its reasons hold."""
    return [item["why"], *(option["reason"] for option in item["options"])]


def test_before_closing_no_frame_tells_anything_of_the_key(lesson: Lesson) -> None:
    assert lesson.wall is not None
    for _ in range(6):
        voices = [lesson.wall, *lesson.seats.values()]
        said_to(voices)
        play_open_round(lesson)
        heard = said_to(voices)
        text = json.dumps(heard, ensure_ascii=False)
        assert len(heard) > 10
        assert not fields_in(heard) & TELLING_FIELDS
        assert all(secret not in text for secret in secrets_of(lesson.item()))
        assert all(face["stem"] not in text for face in lesson.desk()["items"][lesson.round :])
        lesson.step("close_round")
        lesson.step("show_record")
        wait_for_newest(lesson, "public", voices)
        wait_for_newest(lesson, "own", lesson.seats.values())
        assert "is_key" in fields_in(said_to(voices)) or not lesson.item()["options"]


def play_open_round(lesson: Lesson) -> None:
    """Open a round and let happen what may before it closes."""
    lesson.open_next()
    for place, player in enumerate(PLAYERS):
        lesson.answer(player, wrong=place == 1)
        lesson.seats[player].done("show_view")
    assert lesson.wall is not None
    lesson.wall.last("tally", lambda tally: tally["answered"] == len(PLAYERS))
    lesson.step("strike_item")
    lesson.step("restore_item")
    wait_for_newest(lesson, "public", (lesson.wall, *lesson.seats.values()))


def wait_for_newest(lesson: Lesson, event: str, voices: Iterable[Voice]) -> None:
    """Wait until all have heard what the desk has seen, so that nothing of it comes later."""
    newest = lesson.seen["public"]["version"]
    for voice in voices:
        voice.last(event, lambda view: view["version"] >= newest)


def test_a_right_and_a_wrong_answer_get_the_same_reply(lesson: Lesson) -> None:
    lesson.open_next()
    right, wrong = lesson.answer("ada"), lesson.answer("bo", wrong=True)
    assert {**right, "id": "", "now": 0} == {**wrong, "id": "", "now": 0}


def test_what_only_the_host_may_hear_is_heard_at_the_desk_alone(lesson: Lesson) -> None:
    assert lesson.wall is not None
    lesson.open_next()
    lesson.answer("ada")
    lesson.host.last("desk", lambda desk: desk["public"]["answered"] == 1)
    for voice in (lesson.wall, *lesson.seats.values()):
        assert "desk" not in {event for event, _ in voice.heard}
        assert all(data["desk"] is None for event, data in voice.heard if event == "reply")
    assert all(data["own"] is None for event, data in lesson.wall.heard if event == "reply")
