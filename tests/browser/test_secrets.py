"""Before a round closes nothing that a seat or the wall gets, draws or keeps tells the key."""

import json
from typing import Any

import pytest

from quizroom.questions.model import Format
from quizroom.rehearsal.host import Host
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.screen import Screen
from tests.browser.screens import Screens

TELLTALES = ("is_key", "key_text", "reason", "why", "accepted", "near", "source", "facts", "mean_mark")
ROWS = """() => [...document.querySelectorAll(".row")].map((row) =>
  [row, ...row.querySelectorAll("*")].flatMap((one) => [...one.attributes])
    .filter(({ name }) => name !== "value").map(({ name, value }) => `${name}=${value}`))"""
KEPT = "() => JSON.stringify([{ ...localStorage }, { ...sessionStorage }, document.cookie])"


def first_item(room: Host) -> dict[str, Any]:
    item: dict[str, Any] = room.desk["items"][0]
    return item


def field_names(value: Any) -> set[str]:
    """Every field that holds something, at any depth."""
    if isinstance(value, dict):
        inner = [field_names(one) for one in value.values()]
        return {name for name, one in value.items() if one not in (None, "", [])}.union(*inner)
    if isinstance(value, list):
        return set[str]().union(*(field_names(one) for one in value))
    return set()


def told(screen: Screen) -> str:
    """Everything that has reached the page: frames, drawing, what the browser keeps."""
    kept: str = screen.page.evaluate(KEPT)
    return "\n".join([*screen.watch.frames, screen.page.content(), kept])


@pytest.mark.parametrize("format_", ["one_best", "pick_n", "typed", "ordering", "matching"])
def test_an_open_round_tells_no_key(format_: Format, screens: Screens, lay_out: LayOut) -> None:
    room = lay_out(**review_with([format_], rounds=1))
    item = first_item(room)
    watched: list[Screen] = [screens.seat(room.door_code, "Wren Ulna"), screens.wall(room.door_code)]
    room.step("open_round", number=1)
    for screen in watched:
        screen.shows(item["stem"])
        for packet in screen.watch.packets:
            assert field_names(packet).isdisjoint(TELLTALES)
    explanations = [item["why"], *(one["reason"] for one in (*item["options"], *item["rows"]))]
    words = explanations if item["options"] else [*explanations, *item["key_text"]]
    for screen in watched:
        assert [
            text for text in words if json.dumps(text)[1:-1] in told(screen) or text in told(screen)
        ] == []


def test_the_same_measure_finds_the_key_once_the_record_is_shown(screens: Screens, lay_out: LayOut) -> None:
    room = lay_out(**review_with(["one_best"], rounds=1))
    wall = screens.wall(room.door_code)
    room.step("open_round", number=1)
    room.step("close_round", number=1)
    room.step("show_record", number=1)
    wall.shows(first_item(room)["why"])
    assert {"is_key", "key_text", "reason", "why"} <= set().union(*map(field_names, wall.watch.packets))
    assert first_item(room)["why"] in told(wall)


def test_no_option_is_drawn_differently_from_the_others(screens: Screens, lay_out: LayOut) -> None:
    room = lay_out(**review_with(["one_best"], rounds=1))
    for screen in (screens.seat(room.door_code, "Wren Ulna"), screens.wall(room.door_code)):
        if room.phase == "gathering":
            room.step("open_round", number=1)
        screen.shows(first_item(room)["stem"])
        rows = screen.page.evaluate(ROWS)
        assert len(rows) == len(first_item(room)["options"])
        assert all(row == rows[0] for row in rows), rows


def test_the_wall_gets_no_handle_until_standings_are_on(screens: Screens, lay_out: LayOut) -> None:
    room = lay_out(rounds=1)
    wall = screens.wall(room.door_code)
    seat = screens.seat(room.door_code, "Teal Talus")
    seat.is_in()
    room.step("open_round", number=1)
    seat.answer(first_item(room), right=True)
    room.step("close_round", number=1)
    wall.shows("1 of 1 answered")
    assert "Teal Talus" not in told(wall)
    room.show_standings()
    wall.shows("Teal Talus")


def test_a_seat_hears_nothing_of_what_its_neighbour_chose(screens: Screens, lay_out: LayOut) -> None:
    room = lay_out(**review_with(["one_best"], rounds=1))
    mine, other = (screens.seat(room.door_code, handle) for handle in ("Wren Ulna", "Teal Talus"))
    room.step("open_round", number=1)
    other.answer(first_item(room), right=True)
    mine.page.wait_for_timeout(1200)  # two turns of the counts
    assert '"choice":[' not in "".join(mine.watch.frames)
    assert '"choice":[' in "".join(other.watch.frames) or '"answer_round":1' in "".join(other.watch.frames)
    assert "Teal Talus" not in told(mine)
