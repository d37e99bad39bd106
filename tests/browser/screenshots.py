"""Pictures of the real pages. `python -m tests.browser.screenshots` makes those that the README shows.

With a folder as argument it fills that folder with every page in every phase, in light and dark.
"""

import sys
from collections.abc import Iterator
from pathlib import Path

from quizroom.questions.deck import ALL_FORMATS
from tests.browser.dealt import review_about, review_with
from tests.browser.screen import Screen
from tests.browser.screens import PHONE
from tests.browser.stage import DESKTOP, LECTERN, Stage, stage

PUBLISHED = Path(__file__).resolve().parent.parent.parent / "web" / "screenshots"
IN_THE_README = ("wall-answering", "wall-explained", "desk-answering", "seat-explained")
SETTLING_MS = 900
"""Views, counts (twice a second) and fonts have come by then."""
ROUNDS, PLAYERS = 4, 24
ENOUGH_FOR_ALL_FORMATS = 8
MUSCLE = "biceps_brachii"
"""The README shows a muscle that everybody knows, with two heads and three joints."""


def take_all(folder: Path) -> None:
    """Every screen in every phase, in light and dark, as `screen-phase-scheme.png`."""
    with stage(players=PLAYERS, **review_with(ALL_FORMATS, rounds=ENOUGH_FOR_ALL_FORMATS)) as set_up:
        for phase in phases(set_up):
            for name, screen in set_up.shown.items():
                for scheme in ("light", "dark"):
                    take(screen, folder / f"{name}-{phase}-{scheme}.png", dark=scheme == "dark")
        take_report(set_up, folder)


def take_published(folder: Path) -> None:
    """The few that the README shows, in light, as `screen-phase.png`."""
    with stage(players=PLAYERS, **review_about(MUSCLE, rounds=ROUNDS)) as set_up:
        for phase in phases(set_up):
            for name, screen in set_up.shown.items():
                if f"{name}-{phase}" in IN_THE_README:
                    take(screen, folder / f"{name}-{phase}.png", dark=False)


def take_report(set_up: Stage, folder: Path) -> None:
    """The report of the review that was played, whole, as `report-width-scheme.png`."""
    for device in (PHONE, LECTERN, DESKTOP):
        page, _ = set_up.screens.page(cookies=set_up.cookie, **device)
        page.goto(f"{set_up.screens.origin}/desk/report/{set_up.host.desk['room']}")
        for scheme in ("light", "dark"):
            page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
            page.wait_for_timeout(SETTLING_MS)
            width = device["viewport"]["width"]
            page.screenshot(path=folder / f"report-{width}-{scheme}.png", full_page=True)


def phases(set_up: Stage) -> Iterator[str]:
    """Play, and stop in each phase of the first round; then run to the end."""
    host = set_up.host
    rounds = host.desk["public"]["rounds"]
    yield "gathering"
    host.step("open_round", number=1)
    set_up.me.sees_round(1, rounds)
    set_up.play_answers(1, right=False)
    yield "answering"
    host.step("close_round", number=1)
    yield "closed"
    host.step("show_record", number=1)
    yield "explained"
    for number in range(2, rounds + 1):
        host.step("open_round", number=number)
        set_up.me.sees_round(number, rounds)
        set_up.play_answers(number, right=True)
        yield f"answering-{number}"
        host.step("close_round", number=number)
        host.show_standings()
        yield f"closed-{number}"
        host.step("show_record", number=number)
        yield f"explained-{number}"
    host.step("end_review", number=rounds)
    yield "finished"


def take(screen: Screen, path: Path, *, dark: bool) -> None:
    """One picture, of what is on the screen without scrolling."""
    screen.page.emulate_media(color_scheme="dark" if dark else "light")
    screen.page.wait_for_timeout(SETTLING_MS)
    screen.page.screenshot(path=path, animations="disabled")


def main() -> None:
    """Take them."""
    if len(sys.argv) > 1:
        take_all(Path(sys.argv[1]))
    else:
        take_published(PUBLISHED)


if __name__ == "__main__":
    main()
