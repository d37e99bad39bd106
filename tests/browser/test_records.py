"""The records of all muscles, open to anybody: with scripts and without, on any screen, and on paper."""

from typing import Any

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


def table_cells(page: Page) -> list[list[str]]:
    """The table as a screen reader walks it: by the roles of its rows and cells."""
    page.get_by_text("The picture as a table").click()
    table = page.get_by_role("table", name="Path and supply of")
    rows = table.get_by_role("row").filter(has=page.get_by_role("rowheader")).all()
    return [
        [
            row.get_by_role("rowheader").inner_text(),
            *(cell.inner_text() for cell in row.get_by_role("cell").all()),
        ]
        for row in rows
    ]


def test_the_picture_is_read_as_a_table_drawn_or_not(screens: Screens, axe_source: str) -> None:
    for muscle in ("biceps_brachii", "zygomaticus_major"):
        drawn = open_record(screens, muscle, NARROW_PHONE)
        expect(drawn.locator("svg.figure")).to_be_visible()
        data = drawn.request.get(f"{screens.origin}/records/{muscle}.json").json()
        told = expected_cells(data)
        assert table_cells(drawn) == told
        assert barriers(drawn, axe_source) == []
        assert too_wide(drawn) == []
        written = open_record(screens, muscle, {**LAPTOP, "java_script_enabled": False})
        assert table_cells(written) == told


STEP = " \N{SINGLE RIGHT-POINTING ANGLE QUOTATION MARK} "
STATUS = {"core": "", "variant": " (variant)", "minority": " (minority reading)"}


def expected_cells(data: dict[str, Any]) -> list[list[str]]:
    """What the record's data say, read here anew: two parts at most in these muscles."""

    def sites(what: str, key: str) -> list[list[str]]:
        return [
            [what, ", ".join(filter(None, (one["label"], one["detail"]))) + STATUS[one["status"]],
             head["name"] or "\N{EN DASH}"]
            for head in data["heads"]
            for one in head[key]
        ]  # fmt: skip

    def way(one: dict[str, Any]) -> str:
        branch = f", {one['branch']}" if one["branch"] else ""
        roots, main = one.get("roots", []), one.get("main", [])
        chiefly = f", chiefly {', '.join(main)}" if 0 < len(main) < len(roots) else ""
        told = f" (roots {', '.join(roots)}{chiefly})" if roots else ""
        return STEP.join(one["path"]) + branch + told + STATUS[one["status"]]

    def done(one: dict[str, Any]) -> str:
        role = "prime mover" if one["role"] == "prime" else "assistant"
        condition = f" ({one['condition']})" if one["condition"] else ""
        return f"{one['verb']}, {role}{condition}{STATUS[one['status']]}"

    joints = [
        line
        for row in data["joints"]
        for line in (
            ["joint", row["joint"], " and ".join(row["parts"]) or "\N{EN DASH}"],
            *(["action", done(one), one["part"] or "\N{EN DASH}"] for one in row["actions"]),
        )
    ]
    nerves = [["nerve", way(one), one["part"] or "\N{EN DASH}"] for one in data["nerves"]]
    arteries = [["artery", way(one), one["part"] or "\N{EN DASH}"] for one in data["arteries"]]
    return [*sites("origin", "origins"), *joints, *sites("insertion", "insertions"), *nerves, *arteries]
