"""Pages of a study group, used as its members use them."""

from typing import Any

from playwright.sync_api import expect

from quizroom.marking import marks_of_room
from quizroom.protocol.codec import write
from quizroom.room.state import Room
from quizroom.views.desk import desk_view
from tests.browser.screen import WAIT_MS, Screen
from tests.browser.screens import PHONE, Screens
from tests.browser.seat_screen import SeatScreen
from tests.room.samples import NOON


class GroupSeat(SeatScreen):
    """A seat in a room that nobody leads."""

    def is_ready(self) -> None:
        """Say so, whatever comes next."""
        self.page.locator(".ready_button").click()

    def pause(self) -> None:
        """Ask for a pause."""
        self.page.get_by_role("button", name="Pause").click()

    def go_on(self) -> None:
        """End the pause."""
        self.page.get_by_role("button", name="Go on").click()

    def reads_record(self) -> None:
        """The record is on the page."""
        expect(self.page.locator(".seat-explained .record").first).to_be_visible(timeout=2 * WAIT_MS)


def open_group(
    screens: Screens, *, handle: str, rounds: int, benches: str = "everybody alone", **device: Any
) -> GroupSeat:
    """Somebody opens a room from the front page and sits in its first seat."""
    seat = GroupSeat(*screens.page(**(device or PHONE)))
    page = seat.page
    page.goto(screens.origin)
    page.get_by_role("link", name="Open a room for a study group").click()
    page.get_by_label("Course list").select_option(index=0)
    page.get_by_label("Rounds", exact=True).fill(str(rounds))
    page.get_by_label("no limit").check()
    page.get_by_label("some answers are typed").uncheck()
    page.get_by_label(benches).check()
    page.get_by_label("Name of the evening").fill("Tuesday Table")
    page.get_by_label("Your handle").fill(handle)
    page.get_by_role("button", name="Open the room").click()
    seat.is_in()
    return seat


def come_in(screens: Screens, door_code: str, handle: str, **device: Any) -> GroupSeat:
    """Somebody follows the link."""
    seat = GroupSeat(*screens.page(**(device or PHONE)))
    seat.page.goto(f"{screens.origin}/seat/{door_code}")
    seat.enter(handle)
    seat.is_in()
    return seat


def door_code_of(seat: Screen) -> str:
    """The door code that the page shows."""
    return seat.page.locator(".share_code").inner_text()


def items_of(room: Room) -> list[dict[str, Any]]:
    """All items with their keys, as a desk would show them; no page of a group can see this."""
    shown: list[dict[str, Any]] = write(desk_view(room, marks_of_room(room), NOON))["items"]
    return shown
