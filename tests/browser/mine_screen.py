"""A player's own page, used as players use it."""

from collections.abc import Callable
from typing import Any

from playwright.sync_api import Response, expect

from tests.browser.seat_screen import By, SeatScreen

Look = dict[str, Any]


class MineScreen(SeatScreen):
    """The second look, practice and the return plan, on the player's own device."""

    def opens(self, address: str) -> None:
        """Go to a place on the page, and wait until something is there."""
        self.page.goto(address)
        expect(self.page.locator("#stem")).to_be_visible()

    def asked(self, path: str, go: Callable[[], object]) -> dict[str, Any]:
        """What the server answers at this path while somebody goes somewhere."""

        def is_it(response: Response) -> bool:
            return path in response.url and response.request.method != "PUT"

        with self.page.expect_response(is_it) as answer:
            go()
        found: dict[str, Any] = answer.value.json()
        return found

    def deals(self, *, rounds: int, typed: bool = False, mock: bool = False) -> list[Look]:
        """Have items dealt to practise alone: with options, or all to be typed."""
        self.opens(f"{self.page.url.partition('#')[0]}#/practice")
        self.page.get_by_label("mock practical" if mock else "one after another").check()
        self.page.get_by_role("spinbutton").fill(str(rounds))
        self.page.get_by_label("typed where an item allows it").set_checked(typed or mock)
        self.page.locator("summary", has_text="Families of items").click()
        self.page.get_by_label("nerve", exact=True).check()
        deal = self.page.get_by_role("button", name="Deal the items")
        dealt = self.asked("/mine/api/practice/", deal.click)
        looks: list[Look] = dealt["looks"]
        expect(self.page.locator(".practice")).to_have_count(0)
        return looks

    def is_asked(self, look: Look) -> None:
        """The look is on the page, and nothing of its solution."""
        expect(self.page.locator("h1.stem")).to_have_text(look["face"]["stem"])
        expect(self.page.locator(".answering")).to_be_visible()
        expect(self.page.locator(".look_shown")).to_have_count(0)

    def looks_again(self, look: Look, *, right: bool, by: By = "tap") -> None:
        """Answer one look and see what it is."""
        self.is_asked(look)
        self.choose(as_item(look), right=right, by=by)
        self.hand_in(by)
        expect(self.page.locator(".look_shown")).to_be_visible()

    def goes_on(self, by: By = "tap") -> None:
        """On to the next look, or to the end."""
        button = self.page.locator(".look_shown .hand_in_button")
        if by == "keys":
            button.press("Enter")
        else:
            button.click()

    def writes(self, words: str) -> None:
        """Write at the station one stands at, with keys alone: the line has the focus already."""
        expect(self.page.locator(".typed_input")).to_be_focused()
        self.page.keyboard.type(words)

    def sheet(self) -> list[str]:
        """The lines of the answer sheet, without their numbers."""
        lines = self.page.locator(".sheet_line:visible")
        return [line.split("\n")[-1].strip() for line in lines.all_inner_texts()]

    def opens_without_line(self) -> None:
        """From now on the page is kept on this device."""
        self.page.evaluate("navigator.serviceWorker.ready.then(() => null)")
        self.page.wait_for_function("navigator.serviceWorker.controller !== null")


def as_item(look: Look) -> dict[str, Any]:
    """A look in the form in which the desk knows an item, its key with it."""
    face, solution = look["face"], look["solution"]
    return {
        "format": face["format"],
        "pick": face["pick"],
        "options": solution["options"] or face["options"],
        "rows": solution["rows"],
        "key_text": solution["key_text"],
    }
