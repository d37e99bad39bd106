"""The grid on the desk's start page, filled in as hosts do."""

from playwright.sync_api import Locator, expect

from tests.browser.desk_screen import DeskScreen


class BlueprintScreen:
    """The blueprint of a new review on a desk that is open."""

    def __init__(self, desk: DeskScreen, course: str) -> None:
        """Choose a course list and ask for its grid."""
        self.desk = desk
        self.page = desk.page
        self.page.get_by_role("group", name="Course list").get_by_text(course).click()
        self.page.get_by_label("fill in a grid of regions and families").check()
        # A first count of a long list takes seconds of work, and more on a busy machine.
        expect(self.table).to_be_visible(timeout=90_000)

    @property
    def table(self) -> Locator:
        """The grid itself."""
        return self.page.get_by_role("table")

    @property
    def total(self) -> Locator:
        """The number of rounds of the review, which follows from the grid."""
        return self.page.get_by_label("Rounds", exact=True)

    def cell(self, region: str, family: str) -> Locator:
        """The number of one cell."""
        return self.page.get_by_label(f"{region}, {family}", exact=True)

    def clear(self) -> None:
        """Nothing anywhere."""
        for number in self.table.get_by_role("spinbutton").all():
            if number.is_enabled():
                number.fill("0")

    def deal(self) -> None:
        """Have it dealt."""
        self.page.get_by_role("button", name="Deal the items").click()
