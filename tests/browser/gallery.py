"""A folder full of pictures: every page in every phase, at every size, in light and dark, to be looked at.

`python -m tests.browser.gallery FOLDER` takes all of them; `--help` says how to take a part.
"""

import argparse
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from playwright.sync_api import Page

from tests.browser.barriers import too_wide
from tests.browser.other_pages import OTHER_PAGES
from tests.browser.scenes import SCENES
from tests.browser.sizes import SIZES, TOUCH, needs_scrolling, resize
from tests.browser.stage import House, house

PLAYERS = 24
SCHEMES = ("light", "dark")
PAGES = ("seat", "wall", "desk", "report", "records", *OTHER_PAGES)
MUSCLES = (
    *("biceps_brachii", "flexor_digitorum_profundus", "trapezius", "psoas_major", "masseter"),
    *("extensor_hallucis_longus", "orbicularis_oculi", "levator_labii_superioris_alaeque_nasi"),
)
"""Of very different shape: two heads over three joints, slips, fans, no joint, no bone, a long name."""
SETTLING_MS = 500
"""Counts come twice a second, and fonts and figures are there by then."""


@dataclass(frozen=True)
class Wish:
    """Which part of the pictures is to be taken, and where to."""

    folder: Path
    pages: tuple[str, ...]
    sizes: tuple[str, ...]
    schemes: tuple[str, ...]
    scenes: tuple[str, ...]
    phase: str


def take(page: Page, name: str, phase: str, wish: Wish) -> Iterator[str]:
    """One page in all wished sizes and schemes, as `page-phase-size-scheme.png`; yields what does not fit."""
    for size in wish.sizes:
        resize(page, *SIZES[size])
        for scheme in wish.schemes:
            page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
            page.wait_for_timeout(SETTLING_MS)
            shot = f"{name}-{phase}-{size}-{scheme}"
            page.screenshot(path=wish.folder / f"{shot}.png", animations="disabled", full_page=True)
        yield from (f"{name}-{phase}-{size}: too wide: {one}" for one in too_wide(page))
        if name == "wall" and size != "phone" and needs_scrolling(page):
            yield f"{name}-{phase}-{size}: has to be scrolled"


def take_scenes(stage_house: House, wish: Wish) -> Iterator[str]:
    """Desk, wall and seat in every phase, then the report of what was played."""
    if not {"seat", "wall", "desk", "report"}.intersection(wish.pages):
        return
    for scene in wish.scenes:
        room = ""
        for phase, stage in SCENES[scene](stage_house, TOUCH, PLAYERS):
            room = stage.host.desk["room"]
            if wish.phase not in phase:
                continue
            for name, screen in stage.shown.items():
                if name in wish.pages:
                    yield from take(screen.page, name, phase, wish)
        if "report" in wish.pages:
            yield from _take_at(stage_house, f"/desk/report/{room}", "report", scene, wish)


def take_records(stage_house: House, wish: Wish) -> Iterator[str]:
    """The atlas, and records of very different muscles."""
    yield from _take_at(stage_house, "/records", "records", "atlas", wish)
    for muscle in MUSCLES:
        if wish.phase in muscle:
            yield from _take_at(stage_house, f"/records/{muscle}", "records", muscle, wish)


def take_others(stage_house: House, wish: Wish) -> Iterator[str]:
    """The pages beside a review, in the states that are wished for."""
    for name, show in OTHER_PAGES.items():
        if name in wish.pages:
            for phase, page in show(stage_house):
                if wish.phase in phase:
                    yield from take(page, name, phase, wish)


def _take_at(stage_house: House, path: str, name: str, phase: str, wish: Wish) -> Iterator[str]:
    page, _ = stage_house.screens.page(cookies=stage_house.cookie)
    page.goto(f"{stage_house.screens.origin}{path}")
    yield from take(page, name, phase, wish)
    page.context.close()


def tell(line: str) -> None:
    """One line of what does not fit, as soon as it is known."""
    sys.stdout.write(f"{line}\n")
    sys.stdout.flush()


def main() -> None:
    """Take what the arguments wish for, and print what does not fit its screen."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("--pages", nargs="+", choices=PAGES, default=PAGES)
    parser.add_argument("--sizes", nargs="+", choices=tuple(SIZES), default=tuple(SIZES))
    parser.add_argument("--schemes", nargs="+", choices=SCHEMES, default=SCHEMES)
    parser.add_argument("--scenes", nargs="*", choices=tuple(SCENES), default=tuple(SCENES))
    parser.add_argument("--phase", default="", help="only phases, or muscles, whose name holds this")
    asked = parser.parse_args()
    wish = Wish(
        folder=asked.folder,
        pages=tuple(asked.pages),
        sizes=tuple(asked.sizes),
        schemes=tuple(asked.schemes),
        scenes=tuple(asked.scenes),
        phase=asked.phase,
    )
    wish.folder.mkdir(parents=True, exist_ok=True)
    with house() as stage_house:
        for line in take_scenes(stage_house, wish):
            tell(line)
        for line in take_others(stage_house, wish):
            tell(line)
        if "records" in wish.pages:
            for line in take_records(stage_house, wish):
                tell(line)


if __name__ == "__main__":
    main()
