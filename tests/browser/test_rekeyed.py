"""A flag at a seat, another key at the desk by keyboard alone, and what everybody sees of it."""

from playwright.sync_api import expect

from quizroom.service.host_ports import FIRST_NAME
from tests.browser.barriers import barriers, too_wide
from tests.browser.conftest import LayOut
from tests.browser.dealt import review_about
from tests.browser.desk_screen import DeskScreen
from tests.browser.screens import NARROW_PHONE, PHONE, Screens
from tests.browser.seat_screen import SeatScreen, answer_letters

SAID = "My book says both."


def flag(seat: SeatScreen, text: str) -> None:
    """One tap flags; the words are a second thought."""
    button = seat.page.locator(".flag_button")
    button.click()
    expect(button).to_have_attribute("aria-pressed", "true")
    seat.shows("your host sees that somebody did, not who")
    seat.page.get_by_label("What looks wrong?").fill(text)
    seat.page.get_by_role("button", name="Send").click()
    expect(seat.page.get_by_label("What looks wrong?")).to_have_count(0)


def key_by_keyboard(desk: DeskScreen, letter: str, reason: str) -> None:
    """Unfold the panel, tick one more letter, say why, and key it, without a pointer."""
    keys = desk.page.keyboard
    desk.page.get_by_text("Key it anew").focus()
    keys.press("Enter")
    for _ in range("ABCDE".index(letter) + 1):
        keys.press("Tab")
    keys.press("Space")
    reason_field = desk.page.get_by_label("Reason, for the class")
    for _ in range(5):
        if not reason_field.evaluate("field => field === document.activeElement"):
            keys.press("Tab")
    keys.type(reason)
    keys.press("Enter")


def test_a_flag_leads_to_another_key_and_marks_follow_on_seat_wall_and_desk(
    screens: Screens, lay_out: LayOut, host_cookie: str, axe_source: str
) -> None:
    room = lay_out(**review_about("brachialis", rounds=1))
    room.show_standings()
    ada = screens.seat(room.door_code, "Ada", **NARROW_PHONE)
    bo = screens.seat(room.door_code, "Bo", **PHONE)
    desk, wall = screens.desk(host_cookie, room.desk["room"]), screens.wall(room.door_code)
    room.step("open_round", number=1)
    item = room.desk["items"][0]
    (taken,) = answer_letters(item, right=False)
    ada.answer(item, right=False)
    bo.answer(item, right=True)
    flag(ada, SAID)
    room.step("close_round", number=1)
    ada.shows("wrong · 0 marks")
    desk.shows("1 flag")
    desk.shows(SAID)
    expect(wall.page.locator(".standings_row")).to_contain_text(["1Bo1", "2Ada0"])
    assert SAID not in bo.page.content() + wall.page.content()
    key_by_keyboard(desk, taken, "Books differ.")
    ada.shows("right · 1 mark")
    bo.shows("right · 1 mark")
    wall.shows("Your host keyed this item anew.")
    expect(wall.page.locator(".standings_row")).to_contain_text(["1Ada1", "1Bo1"])
    desk.shows("Keyed anew")
    desk.page.locator(".sheet_changes > summary").click()
    expect(desk.page.locator(".sheet_changes .change_who")).to_contain_text(FIRST_NAME)
    for listening in (ada.says, wall.says):
        listening("Your host keyed this item anew.")
    desk.page.get_by_role("button", name="Settled").click()
    desk.shows("1 flag, settled")
    for screen in (ada, bo, desk, wall):
        assert barriers(screen.page, axe_source) + too_wide(screen.page) == []
    room.step("show_record", number=1)
    ada.shows("Your host keyed this answer. As dealt: ")
    desk.page.get_by_role("button", name="Back to the dealt key").click()
    ada.shows("wrong · 0 marks")
    desk.shows("Keyed as dealt again")
    assert barriers(ada.page, axe_source) + too_wide(ada.page) == []
