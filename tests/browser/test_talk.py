"""A round that is held, talked over and answered again, in real browsers: the desk by keys alone."""

from typing import Any

from playwright.sync_api import expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_with
from tests.browser.desk_screen import DeskScreen
from tests.browser.screen import WallScreen
from tests.browser.screens import LAPTOP, NARROW_PHONE, PHONE, Screens
from tests.browser.seat_screen import SeatScreen

HELD = "The result comes when your host shows it."


def hold_results(desk: DeskScreen) -> None:
    """Switch on with the keyboard that results are held."""
    switch = desk.page.get_by_label("results held until shown")
    switch.focus()
    desk.page.keyboard.press("Space")
    expect(switch).to_be_checked()


def tells_nothing(wall: WallScreen, *seats: SeatScreen) -> None:
    """No key, no bar, no share and no verdict is on any page."""
    for screen in (wall, *seats):
        expect(screen.page.locator(".row-key, .row_bar, .row_share, .verdict, .standings_row")).to_have_count(
            0
        )


def first_letters(seat: SeatScreen) -> str:
    """What the server holds as this seat's first answer."""
    choice: list[str] = seat.watch.view("own")["answer"]["choice"]
    return ", ".join(choice)


def test_a_class_talks_over_a_held_round_answers_again_and_meets_its_twin(
    screens: Screens, lay_out: LayOut, host_cookie: str, axe_source: str
) -> None:
    room = lay_out(**review_with(("one_best",), rounds=2))
    ada = screens.seat(room.door_code, "Ada", **NARROW_PHONE)
    bo = screens.seat(room.door_code, "Bo", **PHONE)
    wall, desk = screens.wall(room.door_code), screens.desk(host_cookie, room.desk["room"], **LAPTOP)
    people = Class(wall=wall, desk=desk, ada=ada, bo=bo, axe=axe_source)
    item = desk.open_round(1)
    hold_results(desk)
    for seat, right in ((ada, True), (bo, False)):
        seat.answer(item, right=right)
    desk.go_on("Close the round")
    people.held()
    desk.go_on("Let them talk")
    people.talking()
    desk.go_on("Answer again now")
    people.answer_again(item)
    desk.go_on("Close the second answers")
    people.held_again()
    desk.go_on("Show the result")
    people.results()
    desk.press("Put a twin item next")
    expect(desk.page.locator(".items_item").nth(1)).to_contain_text("twin of 1")
    desk.go_on("Show the record")
    desk.go_on("Open round 2, the twin of 1")
    ada.sees_round(2, 3)


class Class:
    """Everybody in the room, and what each page must show in each phase."""

    def __init__(
        self, *, wall: WallScreen, desk: DeskScreen, ada: SeatScreen, bo: SeatScreen, axe: str
    ) -> None:
        """Ada is right at once, Bo is not."""
        self.wall, self.desk, self.ada, self.bo, self.axe = wall, desk, ada, bo, axe

    def held(self) -> None:
        """After the first answers: the desk alone knows, and advises to talk."""
        for screen in (self.wall, self.ada, self.bo):
            screen.shows(HELD)
        tells_nothing(self.wall, self.ada, self.bo)
        self.wall.hides("answered")  # a count that rises late would tell of somebody's own time
        self.desk.says("Advised: let them talk, then answer again.")
        self.desk.shows("1 of 2 right (50.0 %), between 35 and 70 %. Advised: let them talk")
        self.fit()

    def talking(self) -> None:
        """The clock runs; whoever reloads finds the own first answer again."""
        self.wall.shows("Talk with your neighbour")
        expect(self.wall.page.get_by_role("timer")).to_contain_text("1:5")
        self.bo.page.reload()
        self.bo.shows("Your first answer:")
        expect(self.bo.page.locator(".row-chosen")).to_have_count(len(first_letters(self.bo).split(", ")))
        self.desk.press("+ 15 s")
        expect(self.wall.page.get_by_role("timer")).to_contain_text("2:")
        tells_nothing(self.wall, self.ada, self.bo)
        self.fit()

    def answer_again(self, item: dict[str, Any]) -> None:
        """Both are right now; a second answer outlives a reload and is told as one."""
        for seat in (self.ada, self.bo):
            seat.shows(f"Your first answer: {first_letters(seat)}.")
            seat.shows("Only the first counts for marks.")
        self.bo.says("Answer round 1 again.")
        self.fit()
        for seat in (self.ada, self.bo):
            seat.answer(item, right=True)
        self.bo.page.reload()
        self.bo.is_received()
        self.desk.shows("Again: 2 of 2 right (100 %)")
        tells_nothing(self.wall)

    def held_again(self) -> None:
        """The second closing tells nothing either, but to the desk."""
        self.wall.shows(HELD)
        tells_nothing(self.wall, self.ada, self.bo)
        self.desk.shows("normalised gain")

    def results(self) -> None:
        """First and second shares side by side; the first answer counts."""
        for screen in (self.wall, self.ada, self.bo):
            screen.shows("first: 1 of 2 right, 50 %")
            screen.shows("again: 2 of 2 right, 100 %")
        expect(self.bo.page.locator(".verdict")).to_contain_text("wrong")
        self.bo.shows("After talking: right. Your first answer counts for marks.")
        expect(self.ada.page.locator(".verdict")).to_contain_text("right · 1 mark")
        changes = self.desk.page.locator(".talk_changes div")
        expect(changes).to_contain_text(
            ["stayed right1", "now right1", "now wrong0", "stayed wrong0", "1.00"]
        )
        self.fit()

    def fit(self) -> None:
        """Nothing stands in anybody's way, on no page."""
        for screen in (self.wall, self.desk, self.ada, self.bo):
            assert barriers(screen.page, self.axe) == []
        for seat in (self.ada, self.bo):
            assert too_wide(seat.page) == []
