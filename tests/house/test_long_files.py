"""The order in which test files are started."""

from pathlib import Path

import pytest

from tests.long_files import LONGEST_FIRST, TESTS, place


@pytest.mark.parametrize("name", LONGEST_FIRST)
def test_every_long_file_is_there(name: str) -> None:
    assert (TESTS / name).is_file()


def test_long_files_come_first_and_the_others_keep_their_order(request: pytest.FixtureRequest) -> None:
    assert len(set(LONGEST_FIRST)) == len(LONGEST_FIRST)
    assert sorted(map(place, [TESTS / name for name in LONGEST_FIRST])) == list(range(len(LONGEST_FIRST)))
    assert place(Path(__file__)) == len(LONGEST_FIRST)
    places = [place(item.path) for item in request.session.items]
    assert places == sorted(places)
