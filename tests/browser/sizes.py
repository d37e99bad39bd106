"""The screens on which pages are looked at, and what has no room on one."""

from collections.abc import Mapping
from types import MappingProxyType

from playwright.sync_api import Page

from tests.browser.screens import Device

SIZES: Mapping[str, tuple[int, int]] = MappingProxyType(
    {"phone": (360, 740), "projector": (1024, 768), "laptop": (1280, 720), "large": (1920, 1080)}
)
TOUCH: Device = {"viewport": {"width": 360, "height": 740}, "has_touch": True}
"""A phone whose page may be given another size."""
TALLER = """() => [document.documentElement, ...document.querySelectorAll("main")]
  .some((one) => one.scrollHeight > one.clientHeight + 1)"""

SETTLED = """([width, height]) => new Promise((settled) => {
  const look = (frames) => frames === 0 || (innerWidth === width && innerHeight === height)
    ? requestAnimationFrame(() => requestAnimationFrame(settled))
    : requestAnimationFrame(() => look(frames - 1));
  look(600);
})"""
"""A page hears of its new size in the next frame it draws, which on a busy machine comes late."""


def resize(page: Page, width: int, height: int) -> None:
    """Give the page another size, and wait until it has laid itself out in it."""
    page.set_viewport_size({"width": width, "height": height})
    page.evaluate(SETTLED, [width, height])


def needs_scrolling(page: Page) -> bool:
    """Whether the page, or its main part, is taller than there is room."""
    found: bool = page.evaluate(TALLER)
    return found
