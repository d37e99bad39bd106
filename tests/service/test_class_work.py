"""From reviews that were played to the next deal, over a real database."""

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import pytest
from sqlalchemy import Engine, select

from quizroom.questions.experience import AskCount
from quizroom.questions.model import Item
from quizroom.room.commands import CloseRound, EndReview, EnterSeat, OpenRound, StrikeItem, SubmitAnswer
from quizroom.room.state import Plan, Room
from quizroom.service.class_work import ClassWork
from quizroom.service.ports import NotStored
from quizroom.service.reviews import Reviews
from quizroom.service.rooms import Change, Rooms
from quizroom.storage.class_choices import SqlClassChoices
from quizroom.storage.class_memory import MemoryClassChoices
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.kept_reviews import SqlReviews
from quizroom.storage.tables import class_asks, class_choices, class_reviews
from tests.service.courses import knowledge, plan_of
from tests.service.fakes import Desk, SetClock

PLAYERS = tuple(f"p{number}" for number in range(12))


class School:
    """A server's services over one database, without sockets."""

    def __init__(self, engine: Engine) -> None:
        """Start them, as a server does."""
        self.clock, self.seeds = SetClock(), iter(range(1, 1000))
        log = SqlEventLog(engine)
        self.rooms = Rooms(log=log, clock=self.clock, on_change=self._note)
        self.work = ClassWork(rooms=self.rooms, choices=SqlClassChoices(engine))
        self.work.catch_up()
        self.reviews = Reviews(
            catalogue=knowledge(),
            rooms=self.rooms,
            log=log,
            new_seed=lambda: next(self.seeds),
            experience=self.work.experience,
        )

    def _note(self, change: Change) -> None:
        self.work.note(change)

    def deal(self, plan: Plan, order: str) -> Room:
        """A review as the host gets it."""
        return self.reviews.prepare(plan, host="owner", order=order)

    def play(self, room: Room) -> Room:
        """All rounds: everybody takes the last wrong option for the key."""
        self.reviews.open_door(room)
        for player in PLAYERS:
            self.rooms.handle(room.id, EnterSeat(player=player, handle=player, key_hash=player))
        for number, item in enumerate(room.ahead, start=1):
            self.rooms.handle(room.id, OpenRound(round=number))
            self.clock.move(seconds=20)
            for player in PLAYERS:
                self.rooms.handle(
                    room.id, SubmitAnswer(player=player, round=number, choice=(last_wrong(item),))
                )
            self.rooms.handle(room.id, CloseRound(round=number, by_host=True))
        return self.rooms.handle(room.id, EndReview())


def last_wrong(item: Item) -> str:
    return [option.letter for option in item.options if option.source != "key"][-1]


def chosen(item: Item) -> str:
    return next(option.concept for option in item.options if option.letter == last_wrong(item))


@pytest.fixture
def engine(tmp_path: Path) -> Iterator[Engine]:
    """A fresh database."""
    opened = open_database(f"sqlite:///{tmp_path / 'quizroom.sqlite'}")
    yield opened
    opened.dispose()


@pytest.fixture
def school(engine: Engine) -> School:
    """A server that has seen nothing yet."""
    return School(engine)


def lettered() -> Plan:
    return replace(plan_of(rounds=6), typed=False, families=("action", "nerve", "origin"))


def test_what_a_class_chose_wrongly_is_offered_and_measured_in_the_next_deal(school: School) -> None:
    first = school.deal(lettered(), "m1")
    school.play(first)
    school.work.count_one()
    again = school.deal(lettered(), "m2")
    before = {item.stem: item for item in first.ahead}
    same = [item for item in again.ahead if item.stem in before]
    assert len(same) >= 4
    for item in same:
        errors = [option.concept for option in item.options if option.source == "class_error"]
        assert errors == [chosen(before[item.stem])]
        assert item.observed is not None
        assert (item.observed.answered, item.observed.right, item.observed.whose) == (12, 0, "course")
    assert all(item.observed is None for item in first.ahead)


def test_before_a_review_has_ended_nothing_is_counted(school: School) -> None:
    room = school.deal(lettered(), "m1")
    school.reviews.open_door(room)
    school.rooms.handle(room.id, OpenRound(round=1))
    assert not school.work.waiting
    school.work.count_one()
    assert school.work.choices.counts() == ()


def test_an_item_that_is_struck_after_the_end_is_taken_back(school: School) -> None:
    room = school.play(school.deal(lettered(), "m1"))
    school.work.count_one()
    assert len(school.work.choices.counts()) == 6
    school.rooms.handle(room.id, StrikeItem(round=1))
    school.work.count_one()
    assert len(school.work.choices.counts()) == 5


def test_of_an_erased_review_no_count_is_left(school: School, engine: Engine) -> None:
    room = school.play(school.deal(lettered(), "m1"))
    school.work.count_one()
    SqlReviews(engine).erase_review(room.id)
    assert school.work.experience(lettered().course).errors == {}
    with engine.connect() as connection:
        for table in (class_reviews, class_asks, class_choices):
            assert connection.execute(select(table)).all() == []


def test_what_was_not_counted_before_a_stop_is_counted_after_the_next_start(engine: Engine) -> None:
    first = School(engine)
    room = first.play(first.deal(lettered(), "m1"))
    second = School(engine)
    assert list(second.work.waiting) == [room.id]
    second.work.count_one()
    assert len(second.work.choices.counts(lettered().course)) == 6
    assert list(School(engine).work.waiting) == []


class Watched(SqlClassChoices):
    """A store that notes how often its counts are read."""

    read = 0

    def counts(self, course: str | None = None) -> tuple[AskCount, ...]:
        self.read += 1
        return super().counts(course)


def test_counts_are_read_again_only_after_a_change(school: School, engine: Engine) -> None:
    choices = Watched(engine)
    other = ClassWork(rooms=school.rooms, choices=choices)  # another worker over the same database
    course = lettered().course
    assert other.experience(course).errors == {}
    assert other.experience(course) is other.experience(course)
    assert choices.read == 2
    room = school.play(school.deal(lettered(), "m1"))
    school.work.count_one()
    errors = other.experience(course).errors
    assert len(errors) == 6
    assert choices.read == 4
    school.rooms.handle(room.id, StrikeItem(round=1))
    school.work.count_one()
    assert len(other.experience(course).errors) == 5
    SqlReviews(engine).erase_review(room.id)
    assert other.experience(course).errors == {}
    assert other.experience(course) == school.work.experience(course)


def test_a_store_that_fails_is_asked_again(school: School) -> None:
    class Failing(MemoryClassChoices):
        def replace(self, *_args: object, **_kwargs: object) -> None:
            raise NotStored("full")

    failing = Failing(dict)
    room = school.play(school.deal(lettered(), "m1"))
    work = ClassWork(rooms=school.rooms, choices=failing, waiting={room.id: None})
    work.count_one()
    assert list(work.waiting) == [room.id]


def test_a_review_that_cannot_be_read_does_not_keep_others_waiting() -> None:
    desk = Desk()
    work = ClassWork(rooms=desk.rooms, choices=MemoryClassChoices(dict), waiting={"gone": None})
    work.count_one()
    assert not work.waiting
