"""A review laid out by its blueprint: filled in, dealt exactly, or refused with the cell at fault."""

import re
from collections import Counter

import pytest
from playwright.sync_api import expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.blueprint_screen import BlueprintScreen
from tests.browser.desk_screen import DeskScreen
from tests.browser.screens import LAPTOP, NARROW_PHONE, Device, Screens

REGIONAL = "Upper limb, regional"
INTRODUCTION = "Upper limb, introduction"


@pytest.fixture
def desk(screens: Screens, host_cookie: str) -> DeskScreen:
    """The desk before a review is on it."""
    return screens.desk(host_cookie)


def test_a_grid_is_filled_in_and_dealt_exactly(desk: DeskScreen, screens: Screens) -> None:
    sheet = BlueprintScreen(desk, REGIONAL)
    sheet.clear()
    wanted = {("forearm", "nerve"): 3, ("shoulder", "origin"): 2, ("arm", "action"): 1}
    for (region, family), rounds in wanted.items():
        sheet.cell(region, family).fill(str(rounds))
    desk.page.get_by_label("Warm-up first").select_option("2")
    expect(sheet.total).to_have_value("8")
    desk.shows("2 to warm up, then 6 rounds by the grid.")
    expect(sheet.table.get_by_role("row", name="forearm").get_by_role("cell").last).to_have_text(
        "3", use_inner_text=True
    )
    sheet.deal()
    desk.shows("8 items dealt")
    items = desk.watch.view("desk")["items"]
    assert [item["warm_up"] for item in items] == [True] * 2 + [False] * 6
    assert Counter((item["region"], item["family"]) for item in items[2:]) == wanted
    desk.shows("warm-up · look-alike")
    desk.shows(f"predicted: {items[0]['predicted']}")
    desk.go_on("Open the door")
    desk.open_round(1)
    wall = screens.wall(desk.watch.view("desk")["public"]["door_code"])
    wall.shows("Round 1 of 8 · warm-up")


def test_a_cell_that_cannot_be_filled_is_named_with_what_it_yields(desk: DeskScreen) -> None:
    sheet = BlueprintScreen(desk, REGIONAL)
    sheet.clear()
    sheet.cell("arm", "nerve").fill("30")
    expect(sheet.cell("arm", "nerve")).to_have_attribute("aria-invalid", "true")
    sheet.deal()
    desk.shows("Arm, nerve: 30 rounds are wanted, but Upper limb, regional yields")
    desk.shows("there without repeating a fact.")
    sheet.cell("arm", "nerve").fill("1")
    sheet.deal()
    desk.shows("1 item dealt")


def test_a_cell_that_yields_nothing_is_disabled_and_says_why(desk: DeskScreen) -> None:
    sheet = BlueprintScreen(desk, "Regional gross anatomy")
    cell = sheet.cell("orbit", "root")  # the nerves of the eye come from no spinal segment
    expect(cell).to_be_disabled()
    # Chromium puts a space where one part of the description ends.
    expect(cell).to_have_accessible_description(
        re.compile("none ?: nothing of this kind is certain enough to be asked there")
    )
    desk.page.get_by_text("can hold none").click()
    desk.shows("orbit × root")


def test_the_grid_begins_with_an_even_share_and_sums_up_what_is_typed(desk: DeskScreen) -> None:
    sheet = BlueprintScreen(desk, INTRODUCTION)
    expect(sheet.total).to_have_value("10")
    desk.page.get_by_label("Rounds to share out").fill("24")
    desk.page.get_by_role("button", name="Share out evenly").click()
    expect(sheet.total).to_have_value("24")
    expect(desk.page.get_by_role("button", name="Share out evenly")).to_be_focused()
    desk.page.get_by_role("group", name="Families of items").get_by_label("action").uncheck()
    expect(sheet.cell("arm", "action")).to_have_count(0)
    expect(sheet.total).not_to_have_value("24")


def test_weights_are_shared_out_over_the_rounds(desk: DeskScreen) -> None:
    sheet = BlueprintScreen(desk, INTRODUCTION)
    sheet.clear()
    sheet.cell("shoulder", "action").fill("2")
    sheet.cell("forearm", "action").fill("1")
    desk.page.get_by_label("the numbers are weights").check()
    desk.page.get_by_label("Rounds to share out").fill("6")
    expect(sheet.total).to_have_value("6")
    sheet.deal()
    desk.shows("6 items dealt")
    items = desk.watch.view("desk")["items"]
    assert Counter(item["region"] for item in items) == {"shoulder": 4, "forearm": 2}


def test_nothing_is_sent_while_the_grid_makes_no_review(desk: DeskScreen) -> None:
    sheet = BlueprintScreen(desk, INTRODUCTION)
    sheet.clear()
    sheet.deal()
    desk.shows("Blueprint: fill in at least one cell.")
    sheet.cell("arm", "action").fill("61")
    sheet.deal()
    desk.shows("Blueprint: whole numbers from 0 to 60.")


def test_unticked_the_families_take_turns_as_ever(desk: DeskScreen) -> None:
    BlueprintScreen(desk, INTRODUCTION)
    desk.page.get_by_label("fill in a grid of regions and families").uncheck()
    expect(desk.page.get_by_role("table")).to_have_count(0)
    desk.page.get_by_label("Rounds", exact=True).fill("4")
    desk.page.get_by_role("button", name="Deal the items").click()
    desk.shows("4 items dealt")


def test_the_grid_is_worked_by_keyboard_alone(desk: DeskScreen) -> None:
    sheet = BlueprintScreen(desk, INTRODUCTION)
    first = sheet.cell("shoulder girdle", "action")
    first.focus()
    desk.page.keyboard.press("ControlOrMeta+a")
    desk.page.keyboard.type("3")
    expect(first).to_have_value("3")
    desk.page.keyboard.press("Tab")
    expect(sheet.cell("shoulder girdle", "prime mover")).to_be_focused()
    desk.page.keyboard.press("ArrowUp")
    desk.page.keyboard.press("Enter")
    desk.shows("items dealt")


def test_axe_finds_no_barrier_in_the_grid(desk: DeskScreen, axe_source: str) -> None:
    sheet = BlueprintScreen(desk, REGIONAL)
    sheet.cell("arm", "nerve").fill("30")
    assert barriers(desk.page, axe_source) == []
    header = sheet.table.get_by_role("columnheader", name="nerve")
    expect(header).to_have_attribute("scope", "col")
    expect(sheet.table.get_by_role("rowheader", name="forearm")).to_have_attribute("scope", "row")


@pytest.mark.parametrize("device", [LAPTOP, NARROW_PHONE], ids=["laptop", "phone"])
def test_nothing_is_cut_off(screens: Screens, host_cookie: str, device: Device, axe_source: str) -> None:
    sheet = BlueprintScreen(screens.desk(host_cookie, **device), REGIONAL)
    expect(sheet.cell("forearm", "look-alike")).to_be_visible()
    assert too_wide(sheet.page) == []
    assert barriers(sheet.page, axe_source) == []
