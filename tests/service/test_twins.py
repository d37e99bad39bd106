"""Twins of rounds that were talked over, made from the real content."""

from dataclasses import replace

import pytest

from quizroom.questions.again import is_another
from quizroom.questions.model import Family
from quizroom.room.commands import CloseRound, DropItem, OpenRound
from quizroom.room.refusals import Refused
from quizroom.room.state import Room
from quizroom.room.talk_commands import CloseAgain, LetTalk, OpenAgain
from quizroom.service.reviews import Reviews
from quizroom.service.twins import NoTwin, twin_item
from tests.service.courses import knowledge, plan_of
from tests.service.dealing import reviews
from tests.service.fakes import Desk


def laid_out(service: Reviews, rounds: int = 10, *, families: tuple[Family, ...] = ()) -> Room:
    """A review whose results are held, its door open."""
    plan = replace(plan_of(rounds), holds_results=True, timing="untimed", typed=False)
    room = service.prepare(replace(plan, families=families or plan.families), host="owner", order="m1")
    return service.open_door(room)


def talked(service: Reviews, room: Room) -> Room:
    """The room with its next round talked over."""
    number = len(room.rounds) + 1
    for order in (
        OpenRound(round=number),
        CloseRound(round=number, by_host=True),
        LetTalk(round=number),
        OpenAgain(round=number, by_host=True),
        CloseAgain(round=number, by_host=True),
    ):
        room = service.rooms.handle(room.id, order)
    return room


def test_a_twin_asks_a_fact_of_its_round_by_another_item_and_comes_next() -> None:
    service = reviews(Desk())
    room = laid_out(service)
    made = 0
    for number in range(1, 11):
        room = talked(service, room)
        asked = room.rounds[-1].item
        others = (*(one.item for one in room.rounds), *room.ahead)
        try:
            room = service.add_twin(room, round_number=number)
        except NoTwin:
            continue
        twin = room.ahead[0]
        assert set(twin.facts) & set(asked.facts)
        assert all(twin.id != one.id and is_another(twin, one) for one in others)
        assert room.twins[twin.id] == number
        made += 1
        room = service.rooms.handle(room.id, DropItem(position=0, item=twin.id))
    assert made >= 8


def test_the_same_order_again_makes_no_second_twin() -> None:
    service = reviews(Desk())
    room = talked(service, laid_out(service))
    once = service.add_twin(room, round_number=1)
    assert service.add_twin(once, round_number=1) == once
    # Two orders on their way at once agree on the item, and the second finds it there.
    assert service.add_twin(room, round_number=1) == once


def test_where_the_fact_is_asked_in_no_other_way_the_host_is_told() -> None:
    service = reviews(Desk())
    room = talked(service, laid_out(service))
    with pytest.raises(NoTwin, match="go on with the next round"):
        asked_out(room)


def asked_out(room: Room) -> None:
    """Put one twin after the other into the review, until everything that could be asked is there."""
    course = knowledge().courses[room.plan.course]
    for _ in range(200):
        room = replace(room, ahead=(*room.ahead, twin_item(knowledge(), course, room, 1)))


def test_an_unknown_round_has_no_twin() -> None:
    service = reviews(Desk())
    with pytest.raises(Refused) as refused:
        service.add_twin(laid_out(service), round_number=3)
    assert refused.value.code == "no_such_round"
