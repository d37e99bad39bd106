"""Laying out reviews: dealing items by a plan, swapping them, giving rooms their door codes."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from hashlib import sha256
from random import Random

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Course
from quizroom.questions.deck import ALL_FORMATS, LETTERED, DealPlan, deal, swap
from quizroom.questions.experience import NO_EXPERIENCE, ClassExperience
from quizroom.questions.model import Item
from quizroom.room.commands import OpenDoor, PrepareReview, SwapItem
from quizroom.room.laying_out import is_gone, refuse_unless_at
from quizroom.room.opened import opened_round
from quizroom.room.refusals import Refused
from quizroom.room.state import Plan, Room
from quizroom.room.stations import items_to_come
from quizroom.room.talk import twin_is_there
from quizroom.room.talk_commands import AddTwin
from quizroom.service.ports import EventLog
from quizroom.service.rooms import Rooms
from quizroom.service.twins import twin_item

DOOR_LETTERS = "CDFHJKMNPRTVWXY"
"""No vowels, so no words; no letters that look like others or like figures."""
DOOR_LENGTH = 5
MOST_DOORS_TRIED = 50


class UnknownCourse(Exception):
    """No course list has this id."""


class NoDoorFree(Exception):
    """No unused door code was found."""


@dataclass(frozen=True, slots=True)
class Reviews:
    """What the desk does to reviews before and between rounds."""

    catalogue: Catalogue
    rooms: Rooms
    log: EventLog
    new_seed: Callable[[], int]
    experience: Callable[[str], ClassExperience] = lambda _course: NO_EXPERIENCE
    """What classes did until now with the questions of a course list."""

    def prepare(self, plan: Plan, *, host: str, order: str) -> Room:
        """Deal the plan's items and lay out a new room; the same order again finds that room.

        Args:
            plan: what the review is made of.
            host: to whom it will belong.
            order: id that the host's browser gave to this order alone.

        Raises:
            UnknownCourse: the plan's course list is not there.
            CannotDeal: the course list does not yield the items.
        """
        room_id = room_of_order(host, order)
        known = self.rooms.find(room_id)
        if known is not None:
            return known
        return self.lay_out(room_id, plan, host=host)

    def lay_out(self, room_id: str, plan: Plan, *, host: str) -> Room:
        """Deal the plan's items into a new room. Raises as `prepare` does."""
        items = deal(self.catalogue, self.course(plan.course), self._deal_plan(plan))
        try:
            return self.rooms.handle(room_id, PrepareReview(plan=plan, items=items, host=host))
        except Refused:
            # The same order was carried out elsewhere while the items were being dealt.
            return self.rooms.room(room_id)

    def swap(self, room: Room, *, position: int, instead_of: str) -> Room:
        """Put another item in a place ahead; the same order again changes nothing."""
        if is_gone(room, instead_of):
            return room
        refuse_unless_at(room, position, instead_of)
        items = (*(current.item for current in room.rounds), *items_to_come(room))
        fresh = self._fresh_item(room, items, len(room.rounds) + position)
        return self.rooms.handle(room.id, SwapItem(position=position, instead_of=instead_of, item=fresh))

    def add_twin(self, room: Room, *, round_number: int) -> Room:
        """Put a twin of this round's item next; the same order again changes nothing.

        Raises:
            NoTwin: none can be made.
        """
        if twin_is_there(room, opened_round(room, round_number)):
            return room
        twin = twin_item(self.catalogue, self.course(room.plan.course), room, round_number)
        return self.rooms.handle(room.id, AddTwin(round=round_number, item=twin))

    def open_door(self, room: Room) -> Room:
        """Give the room a door code that no other room has had."""
        return self.rooms.handle(room.id, OpenDoor(door_code=self._free_door_code()))

    def course(self, course: str) -> Course:
        """The course list with this id."""
        if course not in self.catalogue.courses:
            raise UnknownCourse(course)
        return self.catalogue.courses[course]

    def _fresh_item(self, room: Room, items: tuple[Item, ...], position: int) -> Item:
        # The seed comes from the item that leaves, so that two orders on their way at once agree.
        seed = Random(f"{room.plan.seed} {items[position].id}").getrandbits(31)  # noqa: S311 - dealing, not secrets
        course, plan = self.course(room.plan.course), self._deal_plan(room.plan)
        return swap(self.catalogue, course, plan, items, position, seed)

    def _deal_plan(self, plan: Plan) -> DealPlan:
        return replace(deal_plan(plan), experience=self.experience(plan.course))

    def _free_door_code(self) -> str:
        for _ in range(MOST_DOORS_TRIED):
            code = door_code_of(self.new_seed())
            if self.log.room_of_door(code) is None:
                return code
        raise NoDoorFree


def door_code_of(number: int) -> str:
    """The door code that belongs to a random number."""
    letters = []
    for _ in range(DOOR_LENGTH):
        number, index = divmod(number, len(DOOR_LETTERS))
        letters.append(DOOR_LETTERS[index])
    return "".join(letters)


def room_of_order(host: str, order: str) -> str:
    """The id of the room that this order of a host lays out: a repeat must not make a second one."""
    return sha256(f"{host} {order}".encode()).hexdigest()[:16]


def tidy_door_code(raw: str) -> str:
    """A door code as people type it: case, spaces and hyphens do not matter."""
    return "".join(character for character in raw.upper() if character.isalnum())


def deal_plan(plan: Plan) -> DealPlan:
    """The part of the plan that the dealing needs."""
    formats = ALL_FORMATS if plan.typed else LETTERED
    return DealPlan(
        families=plan.families,
        rounds=plan.rounds,
        seed=plan.seed,
        formats=formats,
        blueprint=plan.blueprint,
    )
