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
from quizroom.room.state import Certainty
from tests import browsing, serving
from tests.browser.dealt import COURSE, FAMILIES
from tests.browser.screen import Screen
from tests.browser.screens import PHONE, Device, Screens
from tests.browser.seat_screen import SeatScreen

ADDRESS = "http://hamatehill.example"
"""What pictures show in place of this machine's address."""
LECTERN: Device = {"viewport": {"width": 1280, "height": 720}}
PROJECTOR: Device = {"viewport": {"width": 1024, "height": 768}}
HANDLE = "Nuthatch Navicular"
LEAST_TO_KNOW = 0.45
"""Whose simulated ability is above this is certain, in reviews that ask."""


@dataclass(frozen=True)
class House:
    """A server and a browser, for as many reviews as are looked at."""

    screens: Screens
    cookie: str

    def lay_out(self, *, players: int, handle: str = HANDLE, me: Device = PHONE, **plan: Any) -> "Stage":
        """A demo review with its door open and everybody in."""
        host = Host(self.screens.origin, self.cookie)
        host.lay_out(**{"title": REVIEW_TITLE, "course": {"id": COURSE, "families": FAMILIES}, **plan})
        seats = tuple(
            SimulatedSeat(self.screens.origin, host.door_code, one) for one in people(players, plan["seed"])
        )
        for seat in seats:
            seat.enter()
        mine = self.screens.seat(host.door_code, handle, **me)
        shown: dict[str, Screen] = {
            "seat": mine,
            "wall": self.screens.wall(host.door_code, **PROJECTOR),
            "desk": self.screens.desk(self.cookie, host.desk["room"], **LECTERN),
        }
        return Stage(host=host, seats=seats, me=mine, shown=shown)


@dataclass
class Stage:
    """The demo review, its simulated class, and the screens to be looked at, by name."""

    host: Host
    seats: tuple[SimulatedSeat, ...]
    me: SeatScreen
    shown: dict[str, Screen]

    def item(self, number: int) -> dict[str, Any]:
        """The item of a round, with its key."""
        found: dict[str, Any] = next(item for item in self.host.desk["items"] if item["round"] == number)
        return found

    def play_answers(self, number: int, *, right: bool) -> None:
        """The whole class answers the open round; the person at the real seat is right or wrong."""
        self.play_class(number)
        self.me.answer(self.item(number), right=right)

    def play_class(self, number: int, *, again: bool = False, certain: bool = False) -> None:
        """The simulated part of the class answers, but for two who do not; with `again` they know more."""
        task = task_of(self.host.desk, number)
        for place, seat in enumerate(self.seats[:-2]):
            dice = Random(f"{number} {place} {again}")  # noqa: S311 - a simulation, no secret
            ability = seat.person.ability + (1.5 if again else 0)
            choice = choice_of(task, ability=ability, seed=1, dice=dice)
            seat.answer(number, choice, again=again, certainty=_certainty(ability) if certain else None)

    def leave(self) -> None:
        """Everybody goes home."""
        for seat in self.seats:
            seat.drop()
        for screen in self.shown.values():
            screen.page.context.close()
        self.host.close()


@contextmanager
def house() -> Iterator[House]:
    """A server with the invented address, and a browser, until the pictures are taken."""
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        server = serving.start(Path(folder, "data"), settings={"QUIZROOM_ADDRESS": ADDRESS})
        browser = playwright.chromium.launch(
            executable_path=browsing.installed_browser(), args=list(browsing.LAUNCH_ARGUMENTS)
        )
        cookie = desk_cookie(server.address, server.desk_link.rpartition("/")[2])
        try:
            yield House(Screens(browser, server.address), cookie)
        finally:
            browser.close()
            server.stop()


def _certainty(ability: float) -> Certainty:
    return 3 if ability > LEAST_TO_KNOW else 2 if ability > 0 else 1
