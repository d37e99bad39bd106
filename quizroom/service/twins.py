"""Twins: another item about the fact of a round, asked to see whether talking has taught it."""

from random import Random

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Course
from quizroom.questions.again import ask_again, is_another
from quizroom.questions.deck import ALL_FORMATS, LETTERED
from quizroom.questions.model import Item
from quizroom.questions.syllabus import syllabus_of
from quizroom.room.state import Room
from quizroom.room.stations import items_to_come

SEEDS_TRIED = 8


class NoTwin(Exception):
    """No other item can be made of a round's fact; its text says why."""


def twin_item(catalogue: Catalogue, course: Course, room: Room, number: int) -> Item:
    """An item that asks the fact of round `number` otherwise, and is not in the review yet.

    The same room gives the same item, so that an order on its way twice makes one twin.

    Raises:
        NoTwin: with the reason, for the host.
    """
    asked = room.rounds[number - 1].item
    here = (*(current.item for current in room.rounds), *items_to_come(room))
    formats = ALL_FORMATS if room.plan.typed else LETTERED
    random = Random(f"twin {room.plan.seed} {asked.id}")  # noqa: S311 - a deal is to be repeatable, not secret
    for _ in range(SEEDS_TRIED):
        other = ask_again(syllabus_of(catalogue, course), asked, random.getrandbits(31), formats=formats)
        if all(one.id != other.id and is_another(other, one) for one in here):
            return other
    raise NoTwin(
        "The course list asks this fact in no other way that is not in the review already: "
        "go on with the next round."
    )
