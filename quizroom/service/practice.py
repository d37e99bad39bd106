"""Practice alone: items of any course list, untimed, or a mock practical of timed stations."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import timedelta

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Course
from quizroom.questions.deck import ALL_FORMATS, LETTERED, CannotDeal, DealPlan, deal_from
from quizroom.questions.mock_practical import deal_stations
from quizroom.questions.model import FAMILIES, Family, Item, Spelling
from quizroom.questions.syllabus import syllabus_of
from quizroom.second_look.asked import AskedLook, LookSet, SetKind
from quizroom.service.look_ports import LookStore
from quizroom.service.looks_made import look_id
from quizroom.service.ports import Clock
from quizroom.service.second_look import UnknownList

MOST_SETS_A_DAY = 50


class TooManySets(Exception):
    """The player has made as many sets as a day allows."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """What a set is to be made of; no families or regions: all. `order` names a wish that may be repeated."""

    order: str
    course: str
    families: tuple[Family, ...]
    regions: tuple[str, ...]
    rounds: int
    kind: SetKind
    seconds: int | None
    typed: bool
    spelling: Spelling


@dataclass(frozen=True, slots=True, kw_only=True)
class Practice:
    """The service; `new_id` names sets whose order has no name."""

    catalogue: Catalogue
    store: LookStore
    clock: Clock
    new_id: Callable[[], str]

    def make(self, player: str, wanted: Wanted) -> tuple[LookSet, tuple[AskedLook, ...]]:
        """Deal a set and keep it; the same order again finds the same set.

        Raises:
            UnknownList: there is no such course list.
            CannotDeal: it does not yield so many questions.
            TooManySets: for today.
            NotStored: nothing was kept.
        """
        set_id = look_id(player, f"set {wanted.order or self.new_id()}")
        known = self.find(player, set_id)
        if known is not None:
            return known
        now = self.clock.now()
        if self.store.sets_since(player, now - timedelta(days=1)) >= MOST_SETS_A_DAY:
            raise TooManySets
        if wanted.course not in self.catalogue.courses:
            raise UnknownList(wanted.course)
        course = self.catalogue.courses[wanted.course]
        items = self._dealt(course, wanted, seed=int(set_id[:7], 16))
        made = LookSet(
            id=set_id,
            player=player,
            kind=wanted.kind,
            title=title_of(course, wanted),
            course=course.id,
            seconds=wanted.seconds,
            made_at=now,
        )
        looks = tuple(_look(made, place, item) for place, item in enumerate(items, 1))
        self.store.add_set(made, looks)
        return made, looks

    def find(self, player: str, set_id: str) -> tuple[LookSet, tuple[AskedLook, ...]] | None:
        """A set of this player with its looks."""
        made = self.store.find_set(player, set_id)
        return None if made is None else (made, self.store.looks_of_set(player, set_id))

    def _dealt(self, course: Course, wanted: Wanted, *, seed: int) -> tuple[Item, ...]:
        syllabus = syllabus_of(self.catalogue, course)
        examined = tuple(family for family in FAMILIES if family in course.families)
        families = tuple(family for family in examined if family in (wanted.families or examined))
        if wanted.kind == "mock":
            items = deal_stations(
                syllabus,
                families=families,
                regions=wanted.regions,
                stations=wanted.rounds,
                typed=wanted.typed,
                seed=seed,
            )
            if len(items) < wanted.rounds:
                raise CannotDeal(_too_few(course, len(items), wanted.rounds))
        else:
            plan = DealPlan(
                families=families,
                rounds=wanted.rounds,
                seed=seed,
                formats=ALL_FORMATS if wanted.typed else LETTERED,
                regions=wanted.regions,
            )
            items = deal_from(syllabus, plan)
        return tuple(replace(item, spelling=wanted.spelling) for item in items)


def title_of(course: Course, wanted: Wanted) -> str:
    """What a set is called."""
    if wanted.kind == "practice":
        return f"Practice: {course.title}"
    pace = "untimed" if wanted.seconds is None else f"{wanted.seconds} s each"
    return f"Mock practical: {course.title}, {wanted.rounds} stations, {pace}"


def _look(made: LookSet, place: int, item: Item) -> AskedLook:
    return AskedLook(
        id=look_id(made.player, f"{made.id} {place}"),
        player=made.player,
        set=made.id,
        place=place,
        made_at=made.made_at,
        course=made.course,
        origin=made.kind,
        item=item,
    )


def _too_few(course: Course, found: int, wanted: int) -> str:
    return (
        f"{course.title} yields {found} station{'' if found == 1 else 's'} of what was chosen; {wanted} were "
        "asked for. Choose fewer stations, more families or more regions."
    )
