"""A record that would tell the key of a later round: it comes after that round, and all screens say so."""

import json
from typing import Any

from quizroom.rehearsal.host import Host
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with_a_record_waiting
from tests.browser.screen import Screen
from tests.browser.screens import Screens


def item_of(room: Host, number: int) -> dict[str, Any]:
    item: dict[str, Any] = next(one for one in room.desk["items"] if one["round"] == number)
    return item


def explain(room: Host, number: int) -> None:
    """Play a round until its record is shown."""
    room.step("open_round", number=number)
    room.step("close_round", number=number)
    room.step("show_record", number=number)


def told(screen: Screen) -> str:
    """All that has reached the page, and all that it shows."""
    return "\n".join([*screen.watch.frames, screen.page.content()])


def told_publicly(desk: Screen) -> str:
    """What the desk has got beside its own items, which hold all keys: the same as everybody."""
    return json.dumps(desk.watch.view("desk")["public"], ensure_ascii=False)


def test_a_record_that_would_tell_a_later_key_comes_after_that_round(
    screens: Screens, lay_out: LayOut, host_cookie: str
) -> None:
    waiting = review_with_a_record_waiting()
    room = lay_out(**waiting.plan)
    public = [screens.seat(room.door_code, "Wren Ulna"), screens.wall(room.door_code)]
    desk = screens.desk(host_cookie, room.desk["room"])
    comes_later = f"The record of {waiting.muscle} comes later"
    keys = [item_of(room, waiting.until)["why"], *item_of(room, waiting.until)["key_text"]]

    for number in range(1, waiting.waits + 1):
        explain(room, number)
    for screen in (*public, desk):
        screen.shows(comes_later)
    for words in [*map(told, public), told_publicly(desk)]:
        assert [key for key in keys if key in words] == []

    for number in range(waiting.waits + 1, waiting.until + 1):
        explain(room, number)
    for screen in (*public, desk):
        screen.shows(item_of(room, waiting.until)["why"])
        screen.hides("comes later")
    for words in [*map(told, public), told_publicly(desk)]:
        assert [key for key in keys if key not in words] == []
