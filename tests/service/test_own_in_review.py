"""A host's own items go through everything that dealt ones go through, and come back as they were."""

from dataclasses import replace
from datetime import timedelta

import pytest

from quizroom.analysis.choices import choices_of
from quizroom.questions.blueprint import Blueprint, Cell
from quizroom.questions.deck import swap
from quizroom.questions.experience import ask_key
from quizroom.questions.model import Item
from quizroom.questions.own import OwnItem
from quizroom.questions.own_dealt import dealt
from quizroom.questions.syllabus import syllabus_of
from quizroom.service.reports import Reports
from quizroom.service.reviews import deal_plan
from quizroom.views.look import BY_HOST, look_face
from tests.questions.own_samples import best, picked, typed
from tests.service.alone import PLAYER, Alone
from tests.service.courses import COURSE, knowledge, plan_of

OWN = (best(picture=None, muscles=()), picked(family="nerve"), typed())


def as_dealt(own: OwnItem, place: int) -> Item:
    return dealt(own, f"i{place}", syllabus_of(knowledge(), knowledge().courses[COURSE]), 1)


ITEMS = tuple(as_dealt(own, place) for place, own in enumerate(OWN))


GRID = Blueprint(cells=(Cell(region="arm", family="nerve", rounds=2),))


@pytest.fixture
def alone() -> Alone:
    alone = Alone()
    alone.review(plan_of(2), wrong=(1, 2, 3), own=ITEMS)
    return alone


def test_what_was_missed_of_them_is_asked_again_just_as_it_was(alone: Alone) -> None:
    (room,) = alone.desk.rooms.live()
    looks = alone.second_looks.second_look(PLAYER, room.id)[1]
    assert sorted(look.item.id for look in looks) == sorted(item.id for item in ITEMS)
    assert all(look.item in ITEMS for look in looks)
    faces = [look_face(look, "") for look in looks]
    assert {face.label for face in faces} == {BY_HOST}
    assert all(face.missed and face.solution.why for face in faces)


def test_they_come_back_on_later_days_until_they_are_known(alone: Alone) -> None:
    seen: set[str] = set()
    for _ in range(4):
        alone.days_later(3)
        today = alone.second_looks.today(PLAYER).looks
        seen |= {look.item.id for look in today if look.item.by_host}
        alone.second_looks.answer(PLAYER, [alone.answer_to(look, right=True) for look in today])
    assert seen == {item.id for item in ITEMS}


def test_answers_to_them_are_counted_by_themselves(alone: Alone) -> None:
    (room,) = alone.desk.rooms.live()
    counted = {one.ask: one for one in choices_of(room)}
    for item in ITEMS:
        assert counted[ask_key(item)].answered == 1
        assert counted[ask_key(item)].right == 0


def test_the_report_holds_them(alone: Alone) -> None:
    (room,) = alone.desk.rooms.live()
    reports = Reports(rooms=alone.desk.rooms, log=alone.desk.log)
    report = reports.review(room.id, host="owner")
    assert report is not None
    assert reports.course(COURSE, host="owner") is not None


@pytest.mark.parametrize("item", ITEMS, ids=lambda item: item.format)
def test_a_dealt_item_takes_the_place_of_one_even_by_a_blueprint(item: Item) -> None:
    course = knowledge().courses[COURSE]
    for plan in (plan_of(2), replace(plan_of(2), blueprint=GRID)):
        other = swap(knowledge(), course, deal_plan(plan), (item, *ITEMS), 0, 5)
        assert not other.by_host


def test_a_look_at_one_keeps_its_item_whatever_becomes_of_the_library(alone: Alone) -> None:
    (room,) = alone.desk.rooms.live()
    first = alone.second_looks.second_look(PLAYER, room.id)[1]
    alone.clock.move(timedelta(hours=2).total_seconds())
    assert alone.second_looks.second_look(PLAYER, room.id)[1] == first
