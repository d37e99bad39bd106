"""An item of the host's own: written by keyboard, mixed in, played, handed on as a file and read again."""

import json
from pathlib import Path
from typing import Any

import orjson
from jsonschema import Draft202012Validator
from playwright.sync_api import Page, expect

from quizroom.exchange.review_file.schema import review_schema
from tests.browser import keys
from tests.browser.barriers import barriers, too_wide
from tests.browser.conftest import LayOut
from tests.browser.desk_screen import DeskScreen
from tests.browser.screens import Screens
from tests.browsing import AXE
from tests.exchange.uploads import drawing, file_of

STEM = "Which band holds the tendons down at the back of the wrist?"
OPTIONS = (
    ("extensor retinaculum", "It bridges the six compartments."),
    ("flexor retinaculum", "It roofs the carpal tunnel, in front."),
    ("superficial transverse ligament", "It lies in the webs of the fingers."),
)
WORDS = "A line drawing of the back of a wrist; an arrow points to a broad band."
TITLE = "Bands of the wrist"


def test_an_own_item_goes_all_the_way(
    screens: Screens, host_cookie: str, lay_out: LayOut, tmp_path: Path
) -> None:
    desk = screens.desk(host_cookie)
    write_item(desk, tmp_path)
    host = lay_out(rounds=2, title=TITLE)
    desk.page.goto(f"{screens.origin}/desk#{host.desk['room']}")
    mix_in(desk)
    play(desk, screens, host.door_code)
    before = items_of(desk)
    file = save(desk, tmp_path)
    assert list(Draft202012Validator(review_schema()).iter_errors(orjson.loads(file.read_bytes()))) == []
    other = screens.desk(host_cookie)  # a page that has seen nothing of the first review
    drop_from_library(other)
    take(other, file)
    assert items_of(other) == before
    other.shows("Teal Talus")
    other.page.goto(f"{screens.origin}/desk/items")
    expect(other.page.locator(".own_line").filter(has_text=STEM)).to_contain_text("may be asked")


def write_item(desk: DeskScreen, folder: Path) -> None:
    page = desk.page
    page.goto(page.url.replace("/desk", "/desk/items"))
    keys.press(page, page.get_by_role("link", name="Write an item"))
    keys.write(page, page.get_by_role("textbox", name="Question"), STEM)
    for letter, (text, reason) in zip("ABC", OPTIONS, strict=True):
        if letter == "A":
            keys.press(page, page.locator(".own_key input").first, " ")
        keys.write(page, page.get_by_role("textbox", name=f"Option {letter}", exact=True), text)
        keys.write(page, page.get_by_role("textbox", name=f"Why {letter} is right or wrong"), reason)
    desk.shows("It may be asked.")
    picture = folder / "wrist.png"
    picture.write_bytes(file_of(drawing(), "PNG"))
    keys.choose_file(page, page.locator(".own_picture input[type=file]"), picture)
    expect(page.locator(".own_thumbnail")).to_be_visible()
    desk.shows("Not to be asked yet: 2 things to mend or consider.")
    keys.write(page, page.get_by_role("textbox", name="What is to be seen"), WORDS)
    keys.write(page, page.get_by_role("textbox", name="Whose picture it is"), "M. Sorrel, own drawing")
    keys.write(page, page.get_by_role("combobox", name="Muscles whose records"), "extensor indicis")
    desk.shows("It may be asked.")
    page.keyboard.press("Control+s")
    desk.says("Saved.")
    expect(page.locator(".own_seat .stem")).to_have_text(STEM)
    assert barriers(page, AXE.read_text()) == []
    assert too_wide(page) == []


def mix_in(desk: DeskScreen) -> None:
    page = desk.page
    keys.press(page, page.get_by_role("button", name="Add an own item"))
    page.get_by_label("Place among the items ahead").select_option("0")
    keys.press(page, page.get_by_role("button", name=STEM))
    expect(page.locator(".items_stem").first).to_have_text(STEM)
    desk.shows("your own · ahead")


def play(desk: DeskScreen, screens: Screens, door_code: str) -> None:
    """One player has the own item wrong, with everybody looking on; then the review ends."""
    seat, wall = screens.seat(door_code, "Teal Talus"), screens.wall(door_code)
    seat.is_in()
    item = desk.open_round(1)
    for screen in (seat, wall):
        expect(screen.page.get_by_role("img", name=WORDS)).to_be_visible()
        screen.page.wait_for_function(SHOWN)
        screen.hides("Written by your host")
        assert barriers(screen.page, AXE.read_text()) == []
    seat.page.get_by_text("In words").click()
    seat.shows(WORDS)
    seat.answer(item, right=False, by="keys")
    desk.go_on("Close the round")
    for screen in (seat, wall):
        screen.shows("Written by your host.")
    desk.go_on("Show the record")
    seat.shows("Extensor indicis")
    seat.shows(OPTIONS[0][1])
    desk.press("End the review")
    desk.page.get_by_role("button", name="End it").click()
    desk.shows("The review is finished.")


SHOWN = "() => [...document.querySelectorAll('.picture_shown')].every((one) => one.naturalWidth > 0)"


def save(desk: DeskScreen, folder: Path) -> Path:
    page = desk.page
    keys.press(page, page.get_by_text("Save as a file"))
    with page.expect_download() as coming:
        keys.press(page, page.get_by_role("link", name="With what happened"))
    path = folder / coming.value.suggested_filename
    assert path.name == "quizroom-review-Bands-of-the-wrist.json"
    coming.value.save_as(path)
    assert "Teal Talus" in json.dumps(orjson.loads(path.read_bytes()))
    return path


def drop_from_library(desk: DeskScreen) -> None:
    """Delete the own item, so that only the file still has it."""
    page, way_back = desk.page, desk.page.url
    page.goto(way_back.replace("/desk", "/desk/items"))
    line = page.locator(".own_line").filter(has_text=STEM)
    keys.press(page, line.get_by_role("button", name="Delete"))
    keys.press(page, line.get_by_role("button", name="Delete it for good"))
    expect(line).to_have_count(0)
    page.goto(way_back)


def take(desk: DeskScreen, file: Path) -> None:
    """Take the review over, and what a host wrote into the library too."""
    page: Page = desk.page
    desk.shows(TITLE)  # the list has come, and moves nothing any more
    keys.choose_file(page, page.locator(".take_file input[type=file]"), file)
    expect(page.get_by_role("dialog")).to_contain_text("1 player · 1 answer")
    assert barriers(page, AXE.read_text()) == []
    keys.press(page, page.get_by_label("put 1 item that a host wrote into your own items too"), " ")
    keys.press(page, page.get_by_role("button", name="Take it over"))
    desk.shows("The review is finished.")


def items_of(desk: DeskScreen) -> list[dict[str, Any]]:
    """The items as the desk knows them, but for the addresses of pictures."""
    items: list[dict[str, Any]] = desk.watch.view("desk")["items"]
    return [{**item, "picture": item["picture"] and {**item["picture"], "address": ""}} for item in items]
