"""Working a page by its keyboard alone."""

from contextlib import suppress
from pathlib import Path

from playwright.sync_api import Locator, Page, TimeoutError, expect  # noqa: A004 - the library's own name

MOST_STEPS = 500
"""More than there are things to reach, also where a list holds the reviews of all tests before."""

PATIENCE_MS = 5000


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
    """Go to a file field, open the chooser and take a file.

    A browser without a window sometimes lets a key fall that should open a dialog of the system, even where a
    page has but one field; a person would press it again.
    """
    go_to(page, target)
    for key in ("Enter", "Space", "Enter"):
        with suppress(TimeoutError):
            with page.expect_file_chooser(timeout=PATIENCE_MS) as opened:
                page.keyboard.press(key)
            opened.value.set_files(path)
            return
    raise AssertionError(f"no key opens the chooser of {target}")
