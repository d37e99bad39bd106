"""What can be asked about a few muscles has not changed unseen.

After a wanted change: `python -m tests.questions.golden`, and read the diff.
"""

import pytest

from tests.questions.golden import FOLDER, MUSCLES, golden_text


@pytest.mark.parametrize("muscle", MUSCLES)
def test_the_items_of_a_muscle_are_those_of_its_golden_file(muscle: str) -> None:
    assert golden_text(muscle) == (FOLDER / f"{muscle}.txt").read_text("utf-8")


def test_every_golden_file_is_compared() -> None:
    assert sorted(path.stem for path in FOLDER.glob("*.txt")) == sorted(MUSCLES)
