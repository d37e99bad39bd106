"""Working a page by its keyboard alone."""

from pathlib import Path

from playwright.sync_api import Locator, Page, expect

MOST_STEPS = 120


def go_to(page: Page, target: Locator) -> None:
    """Press Tab until the focus is there; it must be reached."""
    expect(target).to_be_visible()
    for _ in range(MOST_STEPS):
        if target.evaluate("one => one === document.activeElement"):
            return
        page.keyboard.press("Tab")
    raise AssertionError(f"the keyboard does not reach {target}")


def write(page: Page, target: Locator, text: str) -> None:
    """Go to a field and write into it."""
    go_to(page, target)
    page.keyboard.insert_text(text)


def press(page: Page, target: Locator, key: str = "Enter") -> None:
    """Go to a button or box and press it."""
    go_to(page, target)
    page.keyboard.press(key)


def choose_file(page: Page, target: Locator, path: Path) -> None:
    """Go to a file field, open the chooser and take a file."""
    go_to(page, target)
    with page.expect_file_chooser() as opened:
        page.keyboard.press("Enter")
    opened.value.set_files(path)
