"""Barriers in a page: what axe finds, and what does not fit."""

from typing import Literal

from playwright.sync_api import Page

RUN_AXE = """async (rules) => {
  const runOnly = rules && { type: "rule", values: rules };
  const found = await axe.run(document, { resultTypes: ["violations"], ...(runOnly && { runOnly }) });
  return found.violations.flatMap(({ id, help, nodes }) =>
    nodes.map((node) => `${id}: ${help}: ${node.target.join(" ")}: ${node.html.slice(0, 160)}`));
}"""
RULES_OF_COLOURS = ("color-contrast", "link-in-text-block")
"""All of axe's rules that colours can break, but one that asks for more than level AA and is off."""
WIDER_THAN_THE_SCREEN = """() => {
  const screen = document.documentElement.clientWidth;
  const scrollers = document.documentElement.scrollWidth > screen ? ["the page scrolls sideways"] : [];
  const wide = [...document.body.querySelectorAll("*")].filter((one) => {
    const { left, right, width, height } = one.getBoundingClientRect();
    const drawn = one.checkVisibility() && width > 1 && height > 1;
    return drawn && (right > screen + 1 || left < -1);
  });
  const named = (one) => `${one.tagName}.${one.className}: ${one.textContent.slice(0, 60)}`;
  return [...scrollers, ...wide.map(named)];
}"""
MOVING = """() => document.getAnimations()
  .filter((one) => one.effect.getComputedTiming().duration > 20)
  .map((one) => `${one.constructor.name} on ${one.effect.target?.className}`)"""


def barriers(page: Page, axe_source: str) -> list[str]:
    """What axe finds in the page as it is, in the light and in the dark.

    The dark has other colours and nothing else (`tests/house/test_web.py`), so there it looks at colours.
    """
    if page.evaluate("typeof axe") == "undefined":
        page.evaluate(axe_source)
    found = [f"light: {line}" for line in _in_scheme(page, "light")]
    found += [f"dark: {line}" for line in _in_scheme(page, "dark", RULES_OF_COLOURS)]
    page.emulate_media(color_scheme="null")
    return found


def too_wide(page: Page) -> list[str]:
    """Everything that reaches beyond the left or right edge of the screen."""
    found: list[str] = page.evaluate(WIDER_THAN_THE_SCREEN)
    return found


def moving(page: Page) -> list[str]:
    """Animations and transitions that are running."""
    found: list[str] = page.evaluate(MOVING)
    return found


def _in_scheme(page: Page, scheme: Literal["light", "dark"], rules: tuple[str, ...] = ()) -> list[str]:
    page.emulate_media(color_scheme=scheme)
    found: list[str] = page.evaluate(RUN_AXE, list(rules) or None)
    return found
