"""The order in which test files are started, and which go together."""

import re
from pathlib import Path

import pytest

from tests.house.checkout import ROOT
from tests.long_files import LONGEST_FIRST, TESTS, place
from tests.scheduling import EVERY_ITEM, unit_of


@pytest.mark.parametrize("name", LONGEST_FIRST)
def test_every_long_file_is_there(name: str) -> None:
    assert (TESTS / name).is_file()


def test_long_files_come_first_and_the_others_keep_their_order(request: pytest.FixtureRequest) -> None:
    assert len(set(LONGEST_FIRST)) == len(LONGEST_FIRST)
    assert sorted(map(place, [TESTS / name for name in LONGEST_FIRST])) == list(range(len(LONGEST_FIRST)))
    assert place(Path(__file__)) == len(LONGEST_FIRST)
    places = [place(item.path) for item in request.session.items]
    assert places == sorted(places)


def test_all_files_that_look_at_every_item_go_to_one_process() -> None:
    taking = re.compile(r"^from tests\.questions\.lists import .*\b(all_items|placed_items)\b", re.MULTILINE)
    files = (TESTS / "questions").glob("test_*.py")
    found = {f"tests/questions/{file.name}" for file in files if taking.search(file.read_text("utf-8"))}
    assert len(found) > 3
    assert {unit_of(file) for file in found} == {unit_of(EVERY_ITEM[0])}
    assert all((ROOT / file).is_file() for file in EVERY_ITEM)
    assert unit_of("tests/questions/test_deal.py") == "tests/questions/test_deal.py"
