"""A real server with a demo review on it, and everybody's screens: what the screenshots are made of."""

import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from random import Random
from typing import Any

from playwright.sync_api import sync_playwright

from quizroom.rehearsal.entry import desk_cookie
from quizroom.rehearsal.host import Host
from quizroom.rehearsal.people import REVIEW_TITLE, people
from quizroom.rehearsal.seat import SimulatedSeat
from quizroom.rehearsal.skill import choice_of, task_of
from tests import browsing, serving
from tests.browser.dealt import COURSE, FAMILIES
from tests.browser.screen import Screen
from tests.browser.screens import PHONE, Screens
from tests.browser.seat_screen import SeatScreen

DESKTOP = {"viewport": {"width": 1440, "height": 900}}
LECTERN = {"viewport": {"width": 1280, "height": 720}}
PROJECTOR = {"viewport": {"width": 1024, "height": 768}}


@dataclass
class Stage:
    """The demo review, its simulated class, and the screens to be looked at, by name."""

    host: Host
    cookie: str
    seats: tuple[SimulatedSeat, ...]
    screens: Screens
    me: SeatScreen
    shown: dict[str, Screen]

    def play_answers(self, number: int, *, right: bool) -> None:
        """The whole class answers the open round; the person at the real seat is right or wrong."""
        item = next(item for item in self.host.desk["items"] if item["round"] == number)
        task = task_of(self.host.desk, number)
        for place, seat in enumerate(self.seats[:-2]):
            dice = Random(f"{number} {place}")  # noqa: S311 - a simulation, no secret
            seat.answer(number, choice_of(task, ability=seat.person.ability, seed=1, dice=dice))
        self.me.answer(item, right=right)


@contextmanager
def stage(*, players: int, **plan: Any) -> Iterator[Stage]:
    """Everything set up and everybody in; the door is open."""
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        server = serving.start(Path(folder, "data"))
        browser = playwright.chromium.launch(
            executable_path=browsing.installed_browser(), args=list(browsing.LAUNCH_ARGUMENTS)
        )
        try:
            yield _set_up(Screens(browser, server.address), server, players=players, plan=plan)
        finally:
            browser.close()
            server.stop()


def _set_up(screens: Screens, server: serving.Server, *, players: int, plan: dict[str, Any]) -> Stage:
    cookie = desk_cookie(server.address, server.desk_link.rpartition("/")[2])
    host = Host(server.address, cookie)
    host.lay_out(title=REVIEW_TITLE, course={"id": COURSE, "families": FAMILIES}, **plan)
    seats = tuple(SimulatedSeat(server.address, host.door_code, one) for one in people(players, plan["seed"]))
    for seat in seats:
        seat.enter()
    me = screens.seat(host.door_code, "Nuthatch Navicular", **PHONE)
    shown: dict[str, Screen] = {
        "seat": me,
        "wall": screens.wall(host.door_code, **PROJECTOR),
        "wall-wide": screens.wall(host.door_code, **LECTERN),
        "desk": screens.desk(cookie, host.desk["room"], **LECTERN),
        "desk-large": screens.desk(cookie, host.desk["room"], **DESKTOP),
    }
    return Stage(host=host, cookie=cookie, seats=seats, screens=screens, me=me, shown=shown)
