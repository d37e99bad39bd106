"""The host's page, used as hosts use it."""

from typing import Any

from playwright.sync_api import Locator, expect

from tests.browser.screen import Screen


class DeskScreen(Screen):
    """What the host has in front."""

    @property
    def next_step(self) -> Locator:
        """The button of the next step, always in the same place."""
        return self.page.locator(".actions_next")

    def press(self, name: str) -> None:
        """Press one of the buttons below."""
        self.page.get_by_role("contentinfo").get_by_role("button", name=name).click()

    def go_on(self, name: str) -> None:
        """Take the next step, which must be this one, with its single key."""
        expect(self.next_step).to_contain_text(name)
        # the view may be here before the acknowledgement of the last step, and until then no key acts
        expect(self.next_step).to_have_attribute("aria-busy", "false")
        self.page.keyboard.press("n")
        expect(self.next_step).not_to_contain_text(name)

    def open_round(self, number: int) -> dict[str, Any]:
        """Open the next round; its item, with the key."""
        self.go_on(f"Open round {number}")
        self.shows("round open")
        return self.item(number)

    def item(self, number: int) -> dict[str, Any]:
        """The item of a round as the server has told the desk."""
        items: list[dict[str, Any]] = self.watch.view("desk")["items"]
        return next(item for item in items if item["round"] == number)

    def handles(self) -> list[str]:
        """Everybody on the roster."""
        return self.page.locator(".roster_handle").all_inner_texts()
