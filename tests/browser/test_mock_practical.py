"""A mock practical from the first station to the printed result, by keys alone."""

from playwright.sync_api import expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.mine_screen import MineScreen
from tests.browser.screens import LAPTOP, NARROW_PHONE, PHONE, Screens

STATIONS = 3


def press(mine: MineScreen, *keys: str) -> None:
    for key in keys:
        mine.page.keyboard.press(key)


def test_a_mock_practical_is_walked_looked_over_and_handed_in_by_keys_alone(screens: Screens) -> None:
    mine = screens.mine(**LAPTOP)
    looks = mine.deals(rounds=STATIONS, mock=True)
    start = mine.page.get_by_label("Begin at station")
    start.focus()
    press(mine, "ArrowDown")
    mine.page.get_by_role("button", name="Begin").press("Enter")
    key = looks[1]["solution"]["key_text"][0]
    mine.shows("Station 2 of 3")
    mine.writes(key)
    assert mine.sheet() == ["blank", key, "blank"]
    press(mine, "Enter")
    mine.says("Next station: 3. 1 to come.")
    press(mine, "Enter")
    mine.shows("Station 1 of 3")
    mine.writes("no such term")
    press(mine, "Enter")
    mine.says("That was the last station.")
    mine.hides(looks[0]["solution"]["why"])
    press(mine, *["Tab"] * 3, "Enter")  # the third line of the sheet is opened
    mine.writes(looks[2]["solution"]["key_text"][0])
    press(mine, "Enter")
    mine.page.get_by_role("button", name="Hand in the sheet").press("Enter")
    mine.shows("2 of 3 marks")
    expect(mine.page.locator(".result")).to_have_count(STATIONS)
    mine.page.reload()
    mine.shows("2 of 3 marks")


def test_the_clock_warns_walks_on_stands_and_can_be_switched_off(screens: Screens) -> None:
    mine = screens.mine()
    mine.page.clock.install()
    mine.deals(rounds=STATIONS, mock=True)
    mine.page.get_by_role("button", name="Begin").click()
    mine.shows("Station 1 of 3")
    for _ in range(46):
        mine.page.clock.run_for(1000)
    mine.says("15 seconds")
    mine.page.get_by_role("button", name="Pause").click()
    for _ in range(30):
        mine.page.clock.run_for(1000)
    mine.shows("Station 1 of 3")
    mine.page.get_by_role("button", name="Go on").click()
    for _ in range(15):
        mine.page.clock.run_for(1000)
    mine.says("Next station: 2. 1 to come.")
    mine.page.get_by_role("button", name="Clock off").click()
    mine.page.clock.run_for(200_000)
    mine.shows("Station 2 of 3")


def test_a_mock_practical_has_no_barrier_and_fits_a_narrow_phone(screens: Screens, axe_source: str) -> None:
    for device in (NARROW_PHONE, PHONE, LAPTOP):
        mine = screens.mine(**device)
        mine.deals(rounds=2, mock=True)
        for button in ("Begin", "Next station", "To the sheet", "Hand in the sheet", ""):
            expect(mine.page.locator("#stem")).to_be_visible()
            assert barriers(mine.page, axe_source) == [], button
            assert too_wide(mine.page) == [], button
            if button:
                mine.page.get_by_role("button", name=button, exact=True).click()
        mine.shows("of 2 marks")
