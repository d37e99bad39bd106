"""People at screens: each in a browser context of their own, as on a device of their own."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from typing import Any

from playwright.sync_api import Browser, Page, expect

from tests.browser.desk_screen import DeskScreen
from tests.browser.mine_screen import MineScreen
from tests.browser.screen import WAIT_MS, WallScreen
from tests.browser.seat_screen import SeatScreen
from tests.browser.watching import Watch

Device = dict[str, Any]

PHONE: Device = {"viewport": {"width": 360, "height": 740}, "has_touch": True, "is_mobile": True}
NARROW_PHONE: Device = {"viewport": {"width": 320, "height": 640}, "has_touch": True, "is_mobile": True}
LAPTOP: Device = {"viewport": {"width": 1280, "height": 720}}
PROJECTOR: Device = {"viewport": {"width": 1024, "height": 768}}

expect.set_options(timeout=WAIT_MS)


@dataclass
class Screens:
    """Everybody's screens in one test; all of them are watched."""

    browser: Browser
    origin: str
    watches: list[Watch] = field(default_factory=list)

    def page(self, *, cookies: str = "", **device: Any) -> tuple[Page, Watch]:
        """A fresh device, which asks for reduced motion unless told otherwise."""
        context = self.browser.new_context(**{"reduced_motion": "reduce", **device})
        context.set_default_timeout(WAIT_MS)
        for pair in filter(None, cookies.split("; ")):
            name, _, value = pair.partition("=")
            context.add_cookies([{"name": name, "value": value, "url": self.origin}])
        page = context.new_page()
        watch = Watch(page, self.origin)
        watch.begin()
        self.watches.append(watch)
        return page, watch

    def seat(self, door_code: str, handle: str, **device: Any) -> SeatScreen:
        """Somebody who takes a seat by the link in the QR code."""
        seat = SeatScreen(*self.page(**(device or PHONE)))
        seat.page.goto(f"{self.origin}/seat/{door_code}")
        seat.enter(handle)
        return seat

    def mine(self, **device: Any) -> MineScreen:
        """Somebody's own page."""
        mine = MineScreen(*self.page(**(device or PHONE)))
        mine.opens(f"{self.origin}/mine")
        return mine

    def wall(self, door_code: str, **device: Any) -> WallScreen:
        """The projector."""
        wall = WallScreen(*self.page(**(device or PROJECTOR)))
        wall.page.goto(f"{self.origin}/wall/{door_code}")
        return wall

    def desk(self, cookies: str, room: str = "", **device: Any) -> DeskScreen:
        """The host, with a review on the desk or none yet."""
        desk = DeskScreen(*self.page(cookies=cookies, **(device or LAPTOP)))
        desk.page.goto(f"{self.origin}/desk#{room}" if room else f"{self.origin}/desk")
        return desk

    @contextmanager
    def network_may_fail(self) -> Iterator[None]:
        """Server or network are going to be away for a while."""
        for watch in self.watches:
            watch.outage = True
        yield
        for watch in self.watches:
            watch.page.wait_for_timeout(0)  # what was said until now is still excused
            watch.outage = False

    def close(self) -> None:
        """Everybody goes home."""
        for watch in self.watches:
            watch.page.context.close()
