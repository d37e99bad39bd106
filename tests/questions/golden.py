"""Golden items: all that can be asked about a muscle, and some of each family, as text.

A change of content or of an item maker shows its effect in the diff. Written anew with
`python -m tests.questions.golden`.
"""

from collections.abc import Iterable
from pathlib import Path

from quizroom.questions.deck import items_of
from quizroom.questions.model import FAMILIES, Family, Item
from quizroom.questions.print import item_as_text
from tests.questions.lists import REGIONAL, examined, syllabus
from tests.questions.pages import renew_examples

FOLDER = Path(__file__).resolve().parents[1] / "golden"
MUSCLES = ("brachialis", "biceps_brachii", "extensor_carpi_radialis_brevis", "infraspinatus")
SEED = 1
OF_EACH_DIRECTION = 3


def golden_texts() -> dict[str, str]:
    """Every golden text of the regional course for one seed, by its file name."""
    items = {family: list(items_of(syllabus(REGIONAL), family, SEED)) for family in examined(REGIONAL)}
    of_muscles = {f"{muscle}.txt": _text(_about(items, muscle)) for muscle in MUSCLES}
    return of_muscles | {f"families/{family}.txt": _text(_some(items[family])) for family in FAMILIES}


def _about(items: dict[Family, list[Item]], muscle: str) -> Iterable[Item]:
    return (item for group in items.values() for item in group if item.muscles[0] == muscle)


def _some(items: list[Item]) -> Iterable[Item]:
    """A few of each direction and format, spread over the list."""
    kinds: dict[tuple[str, str], list[Item]] = {}
    for item in items:
        kinds.setdefault((item.direction, item.format), []).append(item)
    for group in kinds.values():
        yield from group[:: max(1, len(group) // OF_EACH_DIRECTION)][:OF_EACH_DIRECTION]


def _text(items: Iterable[Item]) -> str:
    return "\n".join(map(item_as_text, items))


def write_all() -> None:
    """Write the golden files anew, and the examples on the handbook's pages."""
    texts = golden_texts()
    for name, text in texts.items():
        path = FOLDER / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, "utf-8")
    renew_examples(texts)


if __name__ == "__main__":
    write_all()
