"""What every screen has, and the wall."""

from dataclasses import dataclass

from playwright.sync_api import Page, expect
from playwright.sync_api import TimeoutError as TooLate

from tests.browser.watching import Watch

WAIT_MS = 10_000
"""How long an expected change may take on a busy machine."""


@dataclass
class Screen:
    """A page and what it does unseen."""

    page: Page
    watch: Watch

    def shows(self, text: str) -> None:
        """The text is to be read on the page, not only heard."""
        expect(self.page.locator("body")).to_contain_text(text, timeout=WAIT_MS, use_inner_text=True)

    def hides(self, text: str) -> None:
        """The text is not on the page."""
        expect(self.page.locator("body")).not_to_contain_text(text, timeout=WAIT_MS)

    def says(self, text: str) -> None:
        """The live region has said this since the page was loaded, or says it soon."""
        has_said = "text => window.heard.some((one) => one.includes(text))"
        try:
            self.page.wait_for_function(has_said, arg=text, timeout=2 * WAIT_MS)
        except TooLate as late:
            raise AssertionError(f"never said {text!r}, but {self.watch.heard()}") from late


class WallScreen(Screen):
    """What the projector shows."""
