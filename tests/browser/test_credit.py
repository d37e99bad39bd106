"""A review for credit in real browsers: a roster is read and kept, seats claim, the marks come out."""

import csv
import io
from pathlib import Path

from playwright.sync_api import Page, expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.desk_screen import DeskScreen
from tests.browser.screens import LAPTOP, NARROW_PHONE, PHONE, Screens
from tests.browser.seat_screen import SeatScreen

CLASS = """section;name;id
Lab 1;Ada Alder;00042
Lab 1;Bo O'Dock;HH000102
Lab 1;;HH000103
Lab 2;Cem Clover;HH 000102
Lab 2;Esme Müller-Elder;HH000104
"""
NAMES = ("Ada Alder", "O'Dock", "Esme", "Müller-Elder", "00042", "HH000102", "HH000104", "Lab 1", "Lab 2")


def keep_roster(page: Page, origin: str, axe_source: str) -> None:
    """Choose a file, look it over, keep what can be taken."""
    page.goto(f"{origin}/desk/rosters")
    page.get_by_label("Name, for you alone").fill("HHC-AN 140")
    page.get_by_label("CSV file").set_input_files(
        {"name": "class.csv", "mimeType": "text/csv", "buffer": CLASS.encode()}
    )
    assert barriers(page, axe_source) + too_wide(page) == []
    page.get_by_role("button", name="Read the file").click()
    expect(page.get_by_role("row", name="4 The name is empty")).to_be_visible()
    expect(page.get_by_role("row", name="5 The id")).to_contain_text("stands in line 3 already")
    assert barriers(page, axe_source) + too_wide(page) == []
    page.get_by_role("button", name="Keep these 3 people").click()
    expect(page.get_by_role("heading", name="HHC-AN 140", level=1)).to_be_visible()
    expect(page.get_by_role("cell", name="Esme Müller-Elder")).to_be_visible()
    assert barriers(page, axe_source) + too_wide(page) == []


def lay_out(desk: DeskScreen) -> str:
    """Deal three rounds for credit on the desk's own page, and open the door; its code."""
    page = desk.page
    page.get_by_label("Rounds", exact=True).fill("2")
    page.get_by_text("some answers are typed").click()
    page.get_by_label("By which class roster").select_option(label="by HHC-AN 140 (3)")
    page.get_by_role("button", name="Deal the items").click()
    desk.press("Open the door")
    expect(page.get_by_role("button", name="Open round 1")).to_be_visible()
    expect(page.get_by_role("link", name="Gradebook and record")).to_be_visible()
    code: str = desk.watch.view("desk")["public"]["door_code"]
    return code


def claim(seat: SeatScreen, institutional_id: str) -> None:
    """Say who sits here."""
    seat.page.get_by_label("For credit: your institutional id").fill(institutional_id)
    seat.page.get_by_role("button", name="This is me").click()


def undo_and_assign(page: Page, axe_source: str, address: str, bo: SeatScreen) -> None:
    """Bo has claimed Esme's id: the host undoes it and puts the seat on the roster by hand."""
    page.goto(address)
    page.get_by_role("button", name="Undo the claim of Esme").click()
    expect(page.get_by_role("heading", name="1 of 3 have claimed")).to_be_visible()
    bo.page.get_by_label("For credit: your institutional id").wait_for()
    page.get_by_label("belongs to").select_option(label="Bo O'Dock · HH000102")
    page.get_by_role("button", name="Assign the seat").click()
    bo.shows("You are on the class roster")
    assert barriers(page, axe_source) + too_wide(page) == []


def downloaded(page: Page, file: Path) -> list[list[str]]:
    """The gradebook as Python's reader sees it."""
    page.reload()
    with page.expect_download() as download:
        page.get_by_role("link", name="Gradebook (CSV)").click()
    download.value.save_as(file)
    return list(csv.reader(io.StringIO(file.read_bytes().decode("utf-8"), newline="")))


def test_a_class_for_credit_from_the_roster_to_the_gradebook(
    screens: Screens, host_cookie: str, axe_source: str, tmp_path: Path
) -> None:
    private, _ = screens.page(cookies=host_cookie, **LAPTOP)
    keep_roster(private, screens.origin, axe_source)
    desk = screens.desk(host_cookie, **LAPTOP)
    code = lay_out(desk)
    wall = screens.wall(code)
    wall.shows("For credit")
    ada, bo = screens.seat(code, "Teal Talus", **NARROW_PHONE), screens.seat(code, "Zinc Hamate", **PHONE)
    claim(ada, "42")
    ada.shows("That id is not on the roster")
    ada.shows("4 tries are left")
    assert barriers(ada.page, axe_source) + too_wide(ada.page) == []
    claim(ada, " 00042 ")
    ada.shows("You are on the class roster")
    claim(bo, "hh000104")  # Esme's, by mistake
    bo.shows("You are on the class roster")
    desk.shows("For credit: 2 on the roster")
    assert barriers(desk.page, axe_source) + barriers(wall.page, axe_source) == []

    undo_and_assign(
        private, axe_source, f"{screens.origin}/desk/gradebook/{desk.watch.view('desk')['room']}", bo
    )
    for number in (1, 2):
        item = desk.open_round(number)
        ada.answer(item, right=True)
        bo.answer(item, right=False)
        desk.go_on("Close the round")
        desk.go_on("Show the record")
    desk.press("End the review")
    desk.page.get_by_role("button", name="End it").click()
    ada.shows("This review is for credit")
    totals = {row["handle"]: row["marks"] for row in desk.watch.view("desk")["roster"]}

    table = downloaded(private, tmp_path / "gradebook.csv")
    assert table[0] == ["id", "name", "section", "Class review [2]"]
    assert {line[0]: line[3] for line in table[1:]} == {
        "00042": f"{totals['Teal Talus']:g}",
        "HH000102": f"{totals['Zinc Hamate']:g}",
        "HH000104": "",
    }
    assert totals["Teal Talus"] == 2
    heard = [screen.watch.frames for screen in (desk, wall, ada, bo)]
    assert min(len(frames) for frames in heard) > 5
    assert [name for frames in heard for frame in frames for name in NAMES if name in frame] == []
