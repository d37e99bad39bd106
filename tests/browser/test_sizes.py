"""No page is wider than its screen, and the wall is never scrolled: in every phase, at every size."""

import pytest

from quizroom.rehearsal.people import AWKWARD
from tests.browser.barriers import too_wide
from tests.browser.scenes import SCENES
from tests.browser.screens import Screens
from tests.browser.sizes import SIZES, TOUCH, needs_scrolling, resize
from tests.browser.stage import House

PLAYERS = 2 * len(AWKWARD)
"""Enough for every awkward handle."""

LOOKED_AT = {
    "seat": ("phone", "laptop"),
    "wall": tuple(SIZES),
    "desk": ("phone", "projector", "laptop"),
}
"""A larger seat or desk is the same page with more room."""


@pytest.mark.parametrize("scene", SCENES)
def test_every_page_fits_its_screen(scene: str, screens: Screens, host_cookie: str) -> None:
    misfits: list[str] = []
    for phase, stage in SCENES[scene](House(screens, host_cookie), TOUCH, PLAYERS):
        for name, screen in stage.shown.items():
            if scene == "formats" and name != "wall":
                continue  # test_reading looks at seats and desks in every format
            for size in LOOKED_AT[name]:
                resize(screen.page, *SIZES[size])
                where = f"{name}, {phase}, {size}"
                misfits += [f"{where}: {one}" for one in too_wide(screen.page)]
                if name == "wall" and size != "phone" and needs_scrolling(screen.page):
                    misfits.append(f"{where}: has to be scrolled")
    assert not misfits, "\n".join(misfits)
