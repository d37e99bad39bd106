"""The pictures that the README shows: `python -m tests.browser.screenshots` takes them anew.

With a folder as argument, and the options of `tests.browser.gallery`, it fills that folder with every page.
"""

import sys
from pathlib import Path

from tests.browser import gallery
from tests.browser.dealt import review_about
from tests.browser.screen import Screen
from tests.browser.stage import Stage, house

PUBLISHED = Path(__file__).resolve().parent.parent.parent / "web" / "screenshots"
SETTLING_MS = 900
"""Views, counts (twice a second) and fonts have come by then."""
ROUNDS, PLAYERS = 4, 24
MUSCLE = "biceps_brachii"
"""The README shows a muscle that everybody knows, with two heads and three joints."""


def take_published(folder: Path) -> None:
    """One round, in light, as `screen-phase.png`."""
    with house() as a_house:
        stage = a_house.lay_out(players=PLAYERS, **review_about(MUSCLE, rounds=ROUNDS))
        stage.host.step("open_round", number=1)
        stage.me.sees_round(1, ROUNDS)
        stage.play_answers(1, right=False)
        take(stage, ("wall", "desk"), "answering", folder)
        stage.host.step("close_round", number=1)
        stage.host.step("show_record", number=1)
        take(stage, ("wall", "seat"), "explained", folder)
        stage.leave()


def take(stage: Stage, names: tuple[str, ...], phase: str, folder: Path) -> None:
    """What is on these screens without scrolling."""
    for name in names:
        screen: Screen = stage.shown[name]
        screen.page.emulate_media(color_scheme="light")
        screen.page.wait_for_timeout(SETTLING_MS)
        screen.page.screenshot(path=folder / f"{name}-{phase}.png", animations="disabled")


def main() -> None:
    """Take them."""
    if len(sys.argv) > 1:
        gallery.main()
    else:
        take_published(PUBLISHED)


if __name__ == "__main__":
    main()
