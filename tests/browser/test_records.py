"""The records of all muscles, open to anybody: with scripts and without, on any screen, and on paper."""

from playwright.sync_api import Page, expect

from tests.browser.barriers import barriers, too_wide
from tests.browser.screens import LAPTOP, NARROW_PHONE, Device, Screens

MUSCLES = ("biceps_brachii", "flexor_digitorum_profundus", "trapezius")


def open_record(screens: Screens, muscle: str, device: Device) -> Page:
    page, _ = screens.page(**device)
    page.goto(f"{screens.origin}/records/{muscle}")
    expect(page.get_by_text("Nerve", exact=False).first).to_be_visible()
    return page


def test_axe_finds_no_barrier_in_the_atlas(screens: Screens, axe_source: str) -> None:
    page, _ = screens.page(**LAPTOP)
    page.goto(f"{screens.origin}/records")
    assert barriers(page, axe_source) == []
    for muscle in MUSCLES:
        assert barriers(open_record(screens, muscle, LAPTOP), axe_source) == [], muscle


def test_nothing_is_cut_off_in_the_atlas_at_320_pixels(screens: Screens) -> None:
    page, _ = screens.page(**NARROW_PHONE)
    page.goto(f"{screens.origin}/records")
    assert too_wide(page) == []
    for muscle in MUSCLES:
        assert too_wide(open_record(screens, muscle, NARROW_PHONE)) == [], muscle


def test_a_muscle_is_found_by_any_of_its_words(screens: Screens) -> None:
    page, _ = screens.page(**LAPTOP)
    page.goto(f"{screens.origin}/records")
    page.get_by_role("searchbox").fill("musculocutaneous")
    page.keyboard.press("Enter")
    page.get_by_role("link", name="brachialis", exact=True).click()
    expect(page.locator("body")).to_contain_text("musculocutaneous nerve")


def test_a_record_is_read_without_scripts(screens: Screens) -> None:
    page = open_record(screens, "brachialis", {**LAPTOP, "java_script_enabled": False})
    expect(page.locator("body")).to_contain_text("musculocutaneous nerve")
    expect(page.locator("body")).to_contain_text("coronoid process")
