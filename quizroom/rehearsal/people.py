"""Who plays in a rehearsal. All of it is invented: Hamate Hill College is on no map.

Handles are a bird and a bone, or a given name and a plant; some are as awkward as real ones are.
"""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from itertools import islice
from random import Random

REVIEW_TITLE = "HHC-KN 232 Muscles and Movement"
MOST_PEOPLE = 200
GIVEN = ("Ada", "Bo", "Cem", "Dele", "Esme", "Farid", "Gwen", "Hana", "Ivo", "Jun", "Kofi", "Lena")
PLANTS = (
    *("Alder", "Birch", "Clover", "Dock", "Elder", "Fennel"),
    *("Gorse", "Hazel", "Juniper", "Larch", "Medlar", "Nettle"),
)
BIRDS = (
    *("Curlew", "Finch", "Heron", "Lapwing", "Linnet", "Merlin", "Pipit", "Plover"),
    *("Rook", "Siskin", "Starling", "Swift", "Tern", "Whimbrel", "Wren", "Egret"),
)
BONES = (
    *("Capitate", "Fibula", "Humerus", "Lunate", "Clavicle", "Mandible", "Patella", "Pisiform"),
    *("Radius", "Scapula", "Sternum", "Scaphoid", "Tibia", "Ulna", "Sacrum", "Ethmoid"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Visit:
    """When somebody is there, in numbers of rounds; `joins_at` 0 is before the first."""

    joins_at: int = 0
    drops_at: int | None = None
    returns_at: int | None = None

    def is_in(self, number: int) -> bool:
        """Whether they are on the line at the start of a round."""
        away = self.drops_at is not None and self.drops_at < number
        back = self.returns_at is not None and self.returns_at <= number
        return self.joins_at <= number and (not away or back)


@dataclass(frozen=True, slots=True, kw_only=True)
class Person:
    """A simulated player. `ability` is on the logit scale; `pace` stretches the time to think."""

    handle: str
    visit: Visit
    ability: float
    pace: float
    has_second_device: bool = False
    """Comes in twice, with the same handle, and has to choose another for the second device."""


AWKWARD: tuple[tuple[str, Visit], ...] = (
    ("Teal Talus", Visit()),
    ("鷺 尺骨", Visit()),
    ("عصفور الزند", Visit()),
    ("Yellowhammer of the Inferior Pubic Ramus", Visit()),
    ("Esme O'Dock", Visit(joins_at=4)),
    ("Hana Müller-Elder", Visit(drops_at=3, returns_at=5)),
    ("Bracken", Visit()),
)
"""In this order: the double join, the scripts, the longest handle, the late one, the one who drops out."""


def people(number: int, seed: int) -> tuple[Person, ...]:
    """So many invented people, the same for the same seed; at most half of them are awkward."""
    dice = Random(f"people {seed}")  # noqa: S311 - invented people, no secret
    awkward = AWKWARD[: number // 2]
    plain = ((handle, Visit()) for handle in plain_handles())
    chosen = _mixed(awkward, islice(plain, number - len(awkward)))
    return tuple(_person(handle, visit, dice) for handle, visit in chosen)


def plain_handles() -> Iterator[str]:
    """Handles without any trouble, no two alike: three birds, then a student's own name."""
    for number in range(MOST_PEOPLE):
        turn = number // len(BIRDS)
        if number % 4 == 3:
            student = number // 4
            plant = PLANTS[(5 * student + student // len(GIVEN)) % len(PLANTS)]
            yield f"{GIVEN[student % len(GIVEN)]} {plant}"
        else:
            yield f"{BIRDS[number % len(BIRDS)]} {BONES[(number + turn) % len(BONES)]}"


def _mixed(
    awkward: tuple[tuple[str, Visit], ...], plain: Iterable[tuple[str, Visit]]
) -> Iterator[tuple[str, Visit]]:
    """The awkward ones in between the others, as they come in."""
    rest = list(awkward)
    for one in plain:
        yield one
        if rest:
            yield rest.pop(0)


def _person(handle: str, visit: Visit, dice: Random) -> Person:
    return Person(
        handle=handle,
        visit=visit,
        ability=dice.gauss(0.3, 1.0),
        pace=dice.lognormvariate(0.0, 0.3),
        has_second_device=handle == AWKWARD[0][0],
    )
