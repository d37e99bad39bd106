"""The pages beside a review, in their states: what else the gallery takes pictures of."""

from collections.abc import Callable, Iterator

from playwright.sync_api import Page, expect

from tests.browser import group_screen
from tests.browser.dealt import review_of_long_names
from tests.browser.mine_screen import MineScreen
from tests.browser.sizes import TOUCH
from tests.browser.stage import House
from tests.browser.test_credit import CLASS
from tests.browser.test_own_item import OPTIONS, STEM

Shown = Iterator[tuple[str, Page]]
FORTY = "Wallcreeper of the Widest Wing of Wormian"[:40]


def show_front(house: House) -> Shown:
    """What anybody may open."""
    for phase, path in (
        ("front", "/"),
        ("privacy", "/privacy"),
        ("sign-in", "/sign-in"),
        ("no-page", "/nowhere"),
        ("no-door", "/seat/ABCDE"),
        ("group", "/group"),
    ):
        yield from _visited(house, phase, path, cookies="")


def show_group(house: House) -> Shown:
    """A room that nobody leads."""
    seat = group_screen.open_group(house.screens, handle=FORTY, rounds=1, **TOUCH)
    others = [
        group_screen.come_in(house.screens, group_screen.door_code_of(seat), handle)
        for handle in ("عصفور الزند", "鷺 尺骨")
    ]
    everybody = [seat, *others]
    seat.shows("3 players here")
    yield "gathering", seat.page
    for one in everybody:
        one.is_ready()
    seat.sees_round(1, 1)
    yield "answering", seat.page
    seat.pause()
    seat.shows("Pause.")
    yield "pause", seat.page
    seat.go_on()
    for one in everybody:
        _choose_anything(one.page)
        one.hand_in()
    seat.reads_record()
    yield "explained", seat.page
    for one in everybody:
        one.is_ready()
    seat.shows("Standings")
    yield "finished", seat.page
    for one in everybody:
        one.page.context.close()


def show_mine(house: House) -> Shown:
    """A player's own page, from nothing to the second look of a review."""
    yield from _visited(house, "empty", "/mine", cookies="")
    stage = house.lay_out(players=4, me=TOUCH, handle=FORTY, **review_of_long_names(rounds=2))
    for number in (1, 2):
        stage.host.step("open_round", number=number)
        stage.me.sees_round(number, 2)
        stage.me.answer(stage.item(number), right=False)
        stage.host.step("close_round", number=number)
        stage.host.step("show_record", number=number)
    stage.host.step("end_review", number=2)
    stage.me.shows("Second look: 2 items")
    mine = MineScreen(stage.me.page, stage.me.watch)
    link = mine.page.get_by_role("link", name="Second look: 2 items")
    look = mine.asked("/mine/api/second-look/", link.click)["looks"][0]
    mine.is_asked(look)
    yield "look-asked", mine.page
    mine.looks_again(look, right=False)
    yield "look-shown", mine.page
    mine.opens(f"{house.screens.origin}/mine")
    yield "today", mine.page
    mine.page.get_by_role("button", name="Show link, QR code and words").click()
    mine.page.get_by_role("button", name="Delete everything …").click()
    yield "key-open", mine.page
    stage.leave()


def show_practice(house: House) -> Shown:
    """Practice alone, and a mock practical from its rules to its result."""
    mine = house.screens.mine(**TOUCH)
    mine.opens(f"{house.screens.origin}/mine#/practice")
    yield "form", mine.page
    look = mine.deals(rounds=2)[0]
    mine.is_asked(look)
    yield "asked", mine.page
    mine.deals(rounds=2, mock=True)
    for button in ("Begin", "Next station", "To the sheet", "Hand in the sheet"):
        expect(mine.page.locator("#stem")).to_be_visible()
        yield f"mock-before-{button.lower().replace(' ', '-')}", mine.page
        mine.page.get_by_role("button", name=button, exact=True).click()
    mine.shows("of 2 marks")
    yield "mock-result", mine.page
    mine.page.context.close()


def show_desk_pages(house: House) -> Shown:
    """What a host has beside the review: own items, rosters, hosts."""
    page, _ = house.screens.page(cookies=house.cookie)
    origin = house.screens.origin
    page.goto(f"{origin}/desk/items")
    page.get_by_role("link", name="Write an item").click()
    page.get_by_role("textbox", name="Question").fill(STEM)
    yield "own-unfinished", page
    page.locator(".own_key input").first.click()
    for letter, (text, reason) in zip("ABC", OPTIONS, strict=True):
        page.get_by_role("textbox", name=f"Option {letter}", exact=True).fill(text)
        page.get_by_role("textbox", name=f"Why {letter} is right or wrong").fill(reason)
    page.keyboard.press("Control+s")
    expect(page.locator(".own_seat .stem")).to_have_text(STEM)
    yield "own-written", page
    page.goto(f"{origin}/desk/rosters")
    page.get_by_label("Name, for you alone").fill("HHC-AN 140")
    page.get_by_label("CSV file").set_input_files(
        {"name": "class.csv", "mimeType": "text/csv", "buffer": CLASS.encode()}
    )
    page.get_by_role("button", name="Read the file").click()
    yield "roster-preview", page
    page.get_by_role("button", name="Keep these 3 people").click()
    expect(page.get_by_role("heading", name="HHC-AN 140", level=1)).to_be_visible()
    yield "roster", page
    page.goto(f"{origin}/desk/hosts")
    page.get_by_role("button", name="Make an invitation").click()
    invitation = page.get_by_label("Link").input_value().rpartition("/")[2]
    yield "hosts", page
    for phase, path in (
        ("invitation", f"/invitation/{invitation}"),
        ("items", "/desk/items"),
        ("rosters", "/desk/rosters"),
        ("account", "/desk/account"),
        ("hand-over", "/desk/hand-over"),
    ):
        yield from _visited(house, phase, path, cookies=house.cookie)
    page.context.close()


def show_desk_start(house: House) -> Shown:
    """Laying out a review, and the list of those that are there."""
    names = ("HHC-KN 232 Muscles and Movement", "肘と手首 مراجعة " + FORTY)
    for title in names:
        stage = house.lay_out(players=2, title=title, **review_of_long_names(rounds=2))
        stage.host.step("end_review", number=0)
        stage.leave()
    desk = house.screens.desk(house.cookie)
    expect(desk.page.locator(".reviews_line").first).to_be_visible()
    yield "start", desk.page
    desk.page.get_by_role("button", name="More for").first.click()
    expect(desk.page.get_by_role("dialog")).to_be_visible()
    yield "more", desk.page
    desk.page.context.close()


def _choose_anything(page: Page) -> None:
    """Choose until an answer may be handed in, whatever the format of the item that was dealt."""
    hand_in = page.locator(".hand_in_button")
    for place, box in enumerate(page.get_by_role("combobox").all()):
        box.select_option(index=place + 1)
    for row in page.locator("label", has=page.locator("input[type=radio], input[type=checkbox]")).all():
        if hand_in.get_attribute("aria-disabled") != "true":
            return
        row.click()


def _visited(house: House, phase: str, path: str, *, cookies: str) -> Shown:
    page, _ = house.screens.page(cookies=cookies)
    page.goto(f"{house.screens.origin}{path}")
    expect(page.locator("h1").first).to_be_visible()
    yield phase, page
    page.context.close()


OTHER_PAGES: dict[str, Callable[[House], Shown]] = {
    "open": show_front,
    "group": show_group,
    "mine": show_mine,
    "practice": show_practice,
    "hosting": show_desk_pages,
    "laying-out": show_desk_start,
}
"""By what stands first in the names of their pictures."""
