"""Once opened, the page needs no line: answers are kept, and later each goes out once."""

import pytest
from playwright.sync_api import expect

from tests.browser.mine_screen import Look, MineScreen
from tests.browser.screens import Screens

STATIONS = 3


@pytest.fixture
def mine(screens: Screens) -> MineScreen:
    return screens.mine()


@pytest.fixture
def looks(mine: MineScreen) -> list[Look]:
    """A set of practice with options, opened while there is a line."""
    return mine.deals(rounds=STATIONS)


def test_answers_given_without_a_line_are_kept_over_a_reload_and_each_goes_out_once(
    screens: Screens, mine: MineScreen, looks: list[Look]
) -> None:
    mine.opens_without_line()
    sent: list[str] = []
    mine.page.on(
        "requestfinished", lambda one: sent.append(one.post_data or "") if "/looks" in one.url else None
    )
    with screens.network_may_fail():
        mine.page.context.set_offline(True)
        for number, look in enumerate(looks[:2]):
            mine.looks_again(look, right=number == 0)
            mine.shows("right · 1 mark" if number == 0 else "wrong · 0 marks")
            mine.goes_on()
        mine.shows("off line: 2 answers kept")
        mine.page.reload()
        mine.is_asked(looks[2])
        mine.shows("off line: 2 answers kept")
        mine.page.context.set_offline(False)
        expect(mine.page.locator(".mine_kept")).to_have_count(0)
    assert sum(body.count(look["id"]) for body in sent for look in looks) == 2
    mine.looks_again(looks[2], right=True)
    mine.goes_on()
    mine.shows("2 of 3 items right.")


def test_today_opens_without_a_line_and_what_was_never_opened_says_so(
    screens: Screens, mine: MineScreen
) -> None:
    mine.opens_without_line()
    with screens.network_may_fail():
        mine.page.context.set_offline(True)
        mine.page.reload()
        mine.shows("Second look")
        mine.shows("off line")
        mine.page.goto(f"{screens.origin}/mine#/practice/never-opened")
        mine.shows("nothing of it is kept here")
        mine.page.context.set_offline(False)


def test_a_doubtful_term_is_marked_when_the_line_is_back(screens: Screens, mine: MineScreen) -> None:
    look = mine.deals(rounds=1, typed=True)[0]
    mine.opens_without_line()
    with screens.network_may_fail():
        mine.page.context.set_offline(True)
        mine.looks_again(look, right=False)
        mine.shows("kept; marked when you are back on line")
        mine.page.context.set_offline(False)
        mine.shows("wrong · 0 marks")
