"""A whole class at once: benches, certainty, a talk, more time for one, a strike and another key.

Four at phones, a wall, and a desk; the marks at the end are reckoned by hand in the test.
"""

from typing import Any

from playwright.sync_api import expect

from quizroom.protocol.bench_messages import BenchChoice
from quizroom.rehearsal.host import Host
from tests.browser.barriers import barriers, too_wide
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_about
from tests.browser.desk_screen import DeskScreen
from tests.browser.screens import LAPTOP, NARROW_PHONE, PHONE, Screens
from tests.browser.seat_screen import SeatScreen, answer_letters
from tests.browser.test_benches import take_bench
from tests.browser.test_certainty import say_how_certain
from tests.browser.test_rekeyed import key_by_keyboard

HANDLES = ("Ada", "Bo", "鷺 尺骨", "عصفور الزند")


def answer(seat: SeatScreen, item: dict[str, Any], *, right: bool, certainty: int) -> None:
    """Choose, say how certain where the item can be right or wrong only, hand in."""
    seat.choose(item, right=right)
    if item["format"] == "one_best":
        say_how_certain(seat, certainty)
    seat.hand_in()
    seat.is_received()


def give_twice_the_time(desk: DeskScreen, handle: str) -> None:
    """In the player's dialog; results are held from then on."""
    desk.page.get_by_role("complementary", name="Roster").get_by_role("button", name=handle).click()
    desk.page.get_by_role("radio", name="twice as long").check()
    desk.page.get_by_role("button", name="Change").click()
    expect(desk.page.get_by_role("checkbox", name="results held until shown")).to_be_checked()


class Class:
    """Four at phones with two benches, a wall, a desk, and the program that works the rest."""

    def __init__(self, screens: Screens, room: Host, host_cookie: str, axe: str) -> None:
        """Everybody comes in and takes a bench."""
        devices = (PHONE, NARROW_PHONE, PHONE, NARROW_PHONE)
        self.room, self.axe = room, axe
        self.seats = [
            screens.seat(room.door_code, handle, **device)
            for handle, device in zip(HANDLES, devices, strict=True)
        ]
        self.wall = screens.wall(room.door_code, **LAPTOP)
        self.desk = screens.desk(host_cookie, room.desk["room"])
        for seat, bench in zip(self.seats, ("Carpals", "Carpals", "Tarsals", "Tarsals"), strict=True):
            take_bench(seat, bench)

    def stand(self, *rows: str) -> None:
        """The standings on the wall."""
        expect(self.wall.page.locator(".standings_row")).to_contain_text(list(rows))

    def answer(self, item: dict[str, Any], right: tuple[bool, ...], *, certainty: int) -> None:
        """All four, in their order."""
        for seat, is_right in zip(self.seats, right, strict=True):
            answer(seat, item, right=is_right, certainty=certainty)

    def is_within_reach(self) -> None:
        """Nothing stands in anybody's way, on no page."""
        for page in [screen.page for screen in (*self.seats, self.wall, self.desk)]:
            assert barriers(page, self.axe) + too_wide(page) == []

    def answers_first(self) -> dict[str, Any]:
        """Half are right; Bo comes in after the public deadline, with time of his own."""
        ada, bo, heron, sparrow = self.seats
        item = self.desk.open_round(1)
        answer(ada, item, right=True, certainty=3)
        answer(heron, item, right=False, certainty=3)
        answer(sparrow, item, right=False, certainty=1)
        self.desk.go_on("Close the round")
        self.wall.shows("The result comes when your host shows it.")
        bo.page.reload()
        answer(bo, item, right=True, certainty=2)
        self.desk.shows("2 of 4 right")
        return item

    def talks(self, item: dict[str, Any]) -> None:
        """All are right after talking; the first answers count."""
        self.desk.go_on("Let them talk")
        self.desk.go_on("Answer again now")
        for seat in self.seats:
            seat.shows("Only the first counts for marks.")
        self.answer(item, (True, True, True, True), certainty=3)
        self.desk.go_on("Close the second answers")
        self.desk.go_on("Show the result")
        for screen in (self.wall, *self.seats):
            screen.shows("first: 2 of 4 right, 50 %")
            screen.shows("again: 4 of 4 right, 100 %")
        self.seats[2].shows("After talking: right.")
        self.stand("1Carpals1", "2Tarsals0")

    def gets_another_key(self, item: dict[str, Any]) -> None:
        """What the Tarsals had taken is keyed as well."""
        (taken,) = answer_letters(item, right=False)
        key_by_keyboard(self.desk, taken, "Books differ.")
        self.wall.shows("Your host keyed this item anew.")
        self.stand("1Carpals1", "1Tarsals1")
        self.seats[2].shows("right · 1 mark")
        self.is_within_reach()

    def meets_a_struck_item(self) -> None:
        """It counts for nobody, whoever had it right."""
        self.answer(self.next_round(2), (True, False, False, False), certainty=1)
        self.desk.go_on("Close the round")
        self.room.step("show_record", number=2)
        self.room.strike(2)
        self.seats[0].shows("struck")

    def parts(self) -> None:
        """One of the Tarsals is right in the last round, so that the benches part."""
        self.answer(self.next_round(3), (False, False, True, False), certainty=2)
        self.desk.go_on("Close the round")
        self.room.step("show_result", number=3)
        self.stand("1Tarsals1.5", "2Carpals1")
        self.room.step("end_review", number=3)

    def next_round(self, number: int) -> dict[str, Any]:
        """Open it, past the record if that comes first; its item."""
        if "Show the record" in self.desk.next_step.inner_text():
            self.desk.go_on("Show the record")
        return self.desk.open_round(number)


def test_a_full_class_ends_with_the_marks_that_follow_from_all_that_happened(
    screens: Screens, lay_out: LayOut, host_cookie: str, axe_source: str
) -> None:
    benches = BenchChoice(how="choice", answers=False)
    room = lay_out(**review_about("brachialis", rounds=3), seconds=120, certainty=True, benches=benches)
    people = Class(screens, room, host_cookie, axe_source)
    give_twice_the_time(people.desk, "Bo")
    room.show_standings()
    item = people.answers_first()
    people.talks(item)
    people.gets_another_key(item)
    people.meets_a_struck_item()
    people.parts()
    for seat, marks in zip(people.seats, ("1 of 2", "1 of 2", "2 of 2", "1 of 2"), strict=True):
        seat.shows("The review is finished")
        seat.shows(marks)
    people.is_within_reach()
