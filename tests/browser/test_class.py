"""A class at once: one desk, one wall, five seats, ten rounds in every format, and what happens there."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import pytest

from quizroom.questions.deck import ALL_FORMATS
from quizroom.rehearsal.host import Host
from tests.browser.barriers import barriers
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.desk_screen import DeskScreen
from tests.browser.screen import Screen, WallScreen
from tests.browser.screens import LAPTOP, NARROW_PHONE, PHONE, Screens
from tests.browser.seat_screen import By, SeatScreen

ROUNDS = 10
LATE_FROM = 4
STRUCK = 7
STANDINGS_FROM = 8

Item = dict[str, Any]


@dataclass
class Klass:
    """Everybody at their screens."""

    screens: Screens
    room: Host
    desk: DeskScreen
    wall: WallScreen
    seats: dict[str, SeatScreen]

    def everybody(self) -> list[Screen]:
        """All pages."""
        return [self.desk, self.wall, *self.seats.values()]


def by(handle: str) -> By:
    """How somebody answers."""
    return "keys" if handle == "Keys Only" else "tap"


def is_right(handle: str, number: int) -> bool:
    """Who knows what: everybody something else."""
    return (len(handle) + number) % 3 != 0


def total(handle: str) -> str:
    """The marks that somebody must have at the end."""
    counted = [
        number for number in range(LATE_FROM if handle == "Late" else 1, ROUNDS + 1) if number != STRUCK
    ]
    return f"{sum(is_right(handle, number) for number in counted)} of {len(counted)} marks"


@pytest.fixture
def klass(screens: Screens, lay_out: LayOut, host_cookie: str) -> Klass:
    """Four seats taken; the fifth comes late."""
    room = lay_out(**review_with(ALL_FORMATS, rounds=ROUNDS))
    code = room.door_code
    seats = {
        "Tap": screens.seat(code, "Tap", **PHONE),
        "Keys Only": screens.seat(code, "Keys Only", **LAPTOP),
        "Night": screens.seat(code, "Night", color_scheme="dark", **PHONE),
        "Narrow": screens.seat(code, "Narrow", **NARROW_PHONE),
    }
    desk, wall = screens.desk(host_cookie, room.desk["room"]), screens.wall(code)
    return Klass(screens=screens, room=room, desk=desk, wall=wall, seats=seats)


def answer_again(klass: Klass, item: Item) -> None:
    """An answer may be changed until the round closes."""
    seat = klass.seats["Tap"]
    seat.answer(item, right=not is_right("Tap", item["round"]))
    seat.answer(item, right=is_right("Tap", item["round"]))


def reload_in_the_middle(klass: Klass, item: Item) -> None:
    """A reload in the middle of a round."""
    klass.seats["Night"].page.reload()
    klass.seats["Night"].is_received()


def answer_without_network(klass: Klass, item: Item) -> None:
    """A phone without network answers; the answer goes out by itself afterwards."""
    seat, right = klass.seats["Narrow"], is_right("Narrow", item["round"])
    seat.answer(item, right=not right)
    with klass.screens.network_may_fail():
        seat.page.context.set_offline(True)
        seat.choose(item, right=right)
        seat.hand_in()
        seat.shows("your answer is kept")
        seat.page.context.set_offline(False)
        seat.is_received()


def come_late(klass: Klass, item: Item) -> None:
    """The fifth seat is taken while the round is on."""
    klass.seats["Late"] = klass.screens.seat(klass.room.door_code, "Late", **PHONE)
    klass.seats["Late"].shows(f"You joined at round {LATE_FROM}")
    klass.seats["Late"].answer(item, right=is_right("Late", item["round"]))


def pause_and_lengthen(klass: Klass, item: Item) -> None:
    """The clock stands, runs on, and gets more time."""
    klass.desk.press("Pause the clock")
    for seat in klass.seats.values():
        seat.shows("paused")
    klass.desk.press("Let the clock run")
    klass.desk.press("+ 15 s")
    for seat in klass.seats.values():
        seat.says("15 seconds added.")


def strike(klass: Klass, item: Item) -> None:
    """The item is struck while the round is open."""
    klass.desk.press("Strike this item")
    klass.desk.shows("Struck")


HAPPENINGS: dict[int, Callable[[Klass, Item], None]] = {
    2: answer_again,
    3: reload_in_the_middle,
    LATE_FROM: come_late,
    5: pause_and_lengthen,
    6: answer_without_network,
    STRUCK: strike,
}


def play_round(klass: Klass, number: int, axe_source: str) -> Item:
    """Open, answer, let something happen, close, show the record."""
    item = klass.desk.open_round(number)
    for handle, seat in klass.seats.items():
        seat.sees_round(number, ROUNDS)
        seat.answer(item, right=is_right(handle, number), by=by(handle))
    if number in HAPPENINGS:
        HAPPENINGS[number](klass, item)
    klass.wall.shows(f"{len(klass.seats)} of {len(klass.seats)} answered")
    look_for_barriers(klass, item, axe_source, "answering")
    klass.desk.go_on("Close the round")
    for handle, seat in klass.seats.items():
        seat.shows(verdict(handle, number))
    look_for_barriers(klass, item, axe_source, "closed")
    klass.desk.go_on("Show the record")
    for seat in klass.seats.values():
        seat.shows(item["rows"][0]["reason"] if item["rows"] else item["why"])
    klass.wall.shows(item["key_text"][-1] if item["rows"] else item["why"])
    look_for_barriers(klass, item, axe_source, "explained")
    return item


def verdict(handle: str, number: int) -> str:
    """What the seat shows once the round is closed."""
    if number == STRUCK:
        return "struck"
    return "right · 1 mark" if is_right(handle, number) else "wrong · 0 marks"


def look_for_barriers(klass: Klass, item: Item, axe_source: str, phase: str) -> None:
    """Every page, in the first round of each format."""
    if item["round"] in first_rounds(klass.room):
        for screen in klass.everybody():
            assert barriers(screen.page, axe_source) == [], f"{screen.page.url}, {item['format']}, {phase}"


def first_rounds(room: Host) -> set[int]:
    """The first round of each format."""
    rounds = {item["format"]: item["round"] for item in reversed(room.desk["items"])}
    return set(rounds.values())


def test_a_class_plays_ten_rounds(klass: Klass, axe_source: str) -> None:
    for seat in klass.seats.values():
        seat.is_in()
    klass.wall.shows("4 players here")
    for number in range(1, ROUNDS + 1):
        if number == STANDINGS_FROM:
            klass.desk.page.get_by_label("standings on the wall").check()
        play_round(klass, number, axe_source)
    klass.desk.press("End the review")
    klass.desk.page.get_by_role("button", name="End it").click()
    klass.wall.shows("The review is finished")
    for handle, seat in klass.seats.items():
        seat.shows(total(handle))
        seat.shows("place")
    best = min(klass.seats, key=lambda handle: -int(total(handle).split()[0]))
    klass.wall.shows(best)
    assert klass.desk.handles() == sorted(klass.seats)
