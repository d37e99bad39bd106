"""Golden items: all that can be asked about a muscle, as text, so that a change shows its effect in the diff.

Written anew with `python -m tests.questions.golden`.
"""

from pathlib import Path

from quizroom.questions.deck import items_of
from quizroom.questions.print import item_as_text
from tests.questions.lists import REGIONAL, examined, syllabus

FOLDER = Path(__file__).resolve().parents[1] / "golden"
MUSCLES = ("brachialis", "biceps_brachii", "extensor_carpi_radialis_brevis", "infraspinatus")
SEED = 1


def golden_text(muscle: str) -> str:
    """Every item of the regional course whose first record is the muscle's, for one seed."""
    items = (item for family in examined(REGIONAL) for item in items_of(syllabus(REGIONAL), family, SEED))
    return "\n".join(item_as_text(item) for item in items if item.muscles[0] == muscle)


def write_all() -> None:
    """Write the golden files anew."""
    for muscle in MUSCLES:
        (FOLDER / f"{muscle}.txt").write_text(golden_text(muscle), "utf-8")


if __name__ == "__main__":
    write_all()
