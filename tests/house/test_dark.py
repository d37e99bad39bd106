"""In the dark a page has other colours and nothing else, which is why axe looks there at colours alone."""

import re
from pathlib import Path

import pytest

from tests.house.checkout import ROOT

WEB = ROOT / "web" / "src"
SOURCES = sorted(path for path in WEB.rglob("*") if path.suffix in (".css", ".html", ".ts", ".tsx"))
SHEETS = [path for path in SOURCES if path.suffix == ".css"]
KNOWS = re.compile(r"prefers-color-scheme|data-theme|dataset\.theme|currentTheme")
MAY_KNOW = {"style/tokens.css", "parts/theme.ts", "parts/view_menu.tsx"}
COLOUR = r"#[0-9a-f]{3,8}"
TWO_COLOURS = re.compile(rf"light-dark\({COLOUR}, {COLOUR}\)")
BY_THEME = re.compile(r'^:root\[data-theme="\w+"\] {\n  color-scheme: \w+;\n}', re.MULTILINE)


def named(path: Path) -> str:
    return path.relative_to(WEB).as_posix()


def test_nothing_else_knows_whether_it_is_dark() -> None:
    assert {named(path) for path in SOURCES if KNOWS.search(path.read_text("utf-8"))} == MAY_KNOW


@pytest.mark.parametrize("sheet", SHEETS, ids=named)
def test_what_differs_in_the_dark_is_a_colour(sheet: Path) -> None:
    text = sheet.read_text("utf-8")
    assert len(TWO_COLOURS.findall(text)) == text.count("light-dark(")


def test_a_chosen_theme_sets_the_scheme_and_nothing_else() -> None:
    text = (WEB / "style" / "tokens.css").read_text("utf-8")
    printed = text.count(":root[data-theme]")  # on paper it is always light
    assert len(BY_THEME.findall(text)) == text.count("data-theme") - printed == 2
