"""What can be asked about a few muscles, and in each family, has not changed unseen.

After a wanted change: `python -m tests.questions.golden`, and read the diff.
"""

from functools import cache

import pytest

from quizroom.questions.model import FAMILIES
from tests.questions.golden import FOLDER, MUSCLES, golden_texts

NAMES = [f"{muscle}.txt" for muscle in MUSCLES] + [f"families/{family}.txt" for family in FAMILIES]


@cache
def texts() -> dict[str, str]:
    return golden_texts()


@pytest.mark.parametrize("name", NAMES)
def test_the_items_are_those_of_the_golden_file(name: str) -> None:
    assert texts()[name] == (FOLDER / name).read_text("utf-8")


def test_every_golden_file_is_compared() -> None:
    found = (path.relative_to(FOLDER).as_posix() for path in FOLDER.rglob("*.txt"))
    assert sorted(found) == sorted(NAMES)
