"""What was missed is asked again, and comes back until it is known."""

from datetime import date, timedelta

import pytest

from quizroom.questions.again import is_another
from quizroom.room.commands import StrikeItem
from quizroom.second_look.asked import Wishes
from quizroom.service.second_look import NoSuchReview, UnknownList, UnknownZone, believed
from tests.service.alone import PLAYER, Alone
from tests.service.courses import plan_of

OTHER = "b" * 64


def test_exactly_what_was_missed_is_asked_again_and_by_another_item() -> None:
    alone = Alone()
    room = alone.review(plan_of(6), wrong=(2, 3, 5))
    history, looks = alone.second_looks.second_look(PLAYER, room.id)
    assert [played.number for played in history.missed] == sorted(played.number for played in history.missed)
    assert {look.origin for look in looks} == {f"room {room.id} {number}" for number in (2, 3, 5)}
    asked = {f"room {room.id} {played.number}": played.item for played in history.missed}
    for look in looks:
        assert is_another(look.item, asked[look.origin])
        assert look.missed is not None
        assert look.missed.stem == asked[look.origin].stem
        assert look.missed.chosen


def test_asking_twice_makes_the_same_looks() -> None:
    alone = Alone()
    room = alone.review(plan_of(4), wrong=(1, 2))
    first = alone.second_looks.second_look(PLAYER, room.id)[1]
    assert alone.second_looks.second_look(PLAYER, room.id)[1] == first


def test_an_answered_look_is_not_asked_again_the_same_day() -> None:
    alone = Alone()
    room = alone.review(plan_of(4), wrong=(1, 2))
    first, second = alone.second_looks.second_look(PLAYER, room.id)[1]
    alone.second_looks.answer(PLAYER, [alone.answer_to(first, right=False)])
    assert [look.id for look in alone.second_looks.second_look(PLAYER, room.id)[1]] == [second.id]
    assert alone.second_looks.today(PLAYER).looks == ()


def test_nothing_is_told_of_rounds_that_were_not_explained_while_the_review_goes_on() -> None:
    alone = Alone()
    going_on = alone.review(plan_of(3), wrong=(1, 2, 3), shown=False, ended=False)
    assert alone.second_looks.second_look(PLAYER, going_on.id)[1] == ()


def test_a_struck_item_is_not_missed_any_more() -> None:
    alone = Alone()
    room = alone.review(plan_of(4), wrong=(4,))
    assert len(alone.second_looks.second_look(PLAYER, room.id)[1]) == 1
    alone.desk.rooms.handle(room.id, StrikeItem(round=4))
    assert alone.second_looks.second_look(PLAYER, room.id)[1] == ()


def test_who_had_no_seat_there_is_told_so() -> None:
    alone = Alone()
    room = alone.review(plan_of(3), wrong=(1,))
    with pytest.raises(NoSuchReview):
        alone.second_looks.second_look(OTHER, room.id)


def test_the_first_answer_stays_and_a_repeat_is_answered_the_same() -> None:
    alone = Alone()
    room = alone.review(plan_of(3), wrong=(1,))
    look = alone.second_looks.second_look(PLAYER, room.id)[1][0]
    first = alone.second_looks.answer(PLAYER, [alone.answer_to(look, right=True)])
    alone.clock.move(60)
    again = alone.second_looks.answer(PLAYER, [alone.answer_to(look, right=False)])
    assert again == first
    assert first[0].judged is not None
    assert first[0].judged.verdict == "right"


def test_looks_of_others_and_unknown_ones_come_to_nothing() -> None:
    alone = Alone()
    room = alone.review(plan_of(3), wrong=(1,))
    look = alone.second_looks.second_look(PLAYER, room.id)[1][0]
    assert alone.second_looks.answer(OTHER, [alone.answer_to(look, right=True)])[0].judged is None
    assert len(alone.second_looks.second_look(PLAYER, room.id)[1]) == 1


def test_what_was_wrong_again_comes_back_the_next_day_and_what_was_right_later() -> None:
    alone = Alone()
    room = alone.review(plan_of(4), wrong=(1, 2))
    alone.clock.move(3600)
    right, wrong = alone.second_looks.second_look(PLAYER, room.id)[1]
    came = alone.second_looks.answer(
        PLAYER, [alone.answer_to(right, right=True), alone.answer_to(wrong, right=False)]
    )
    today = alone.clock.now().date()
    assert came[1].due == today + timedelta(days=1)
    assert came[0].due is not None
    assert came[0].due > today + timedelta(days=1)
    alone.days_later(1)
    assert [look.origin for look in alone.second_looks.today(PLAYER).looks] == [f"plan {wrong.fact}"]


def test_three_days_later_with_the_practical_far_off_only_what_was_wrong_is_due() -> None:
    alone = Alone()
    far = Wishes(exam_date=alone.clock.now().date() + timedelta(days=90))
    alone.second_looks.set_wishes(PLAYER, far)
    room = alone.review(plan_of(6), wrong=(1, 2, 3))
    first, *others = alone.second_looks.second_look(PLAYER, room.id)[1]
    answers = [alone.answer_to(first, right=False), *(alone.answer_to(look, right=True) for look in others)]
    alone.second_looks.answer(PLAYER, answers)
    alone.days_later(3)
    day = alone.second_looks.today(PLAYER)
    assert [look.fact for look in day.looks] == [first.fact]
    assert day.looks[0].missed == first.missed


def test_a_day_takes_no_longer_than_it_may() -> None:
    alone = Alone()
    room = alone.review(plan_of(10), wrong=range(1, 11))
    alone.second_looks.set_wishes(PLAYER, Wishes(minutes_a_day=2))
    alone.days_later(1)
    looks = alone.second_looks.today(PLAYER).looks
    assert 0 < sum(look.item.seconds for look in looks) <= 120
    alone.second_looks.answer(PLAYER, [alone.answer_to(look, right=True) for look in looks])
    left = alone.second_looks.today(PLAYER)
    assert sum(look.item.seconds for look in (*looks, *left.looks)) <= 120
    assert alone.second_looks.second_look(PLAYER, room.id)[1]


def test_the_day_is_the_players_own() -> None:
    alone = Alone()  # it is noon in UTC
    alone.second_looks.set_wishes(PLAYER, Wishes(time_zone="Pacific/Kiritimati"))  # fourteen hours ahead
    assert alone.second_looks.today(PLAYER).mind.today == alone.clock.now().date() + timedelta(days=1)


def test_a_zone_or_a_list_that_is_not_there_is_refused() -> None:
    alone = Alone()
    with pytest.raises(UnknownZone):
        alone.second_looks.set_wishes(PLAYER, Wishes(time_zone="Europe/Atlantis"))
    with pytest.raises(UnknownZone):
        alone.second_looks.set_wishes(PLAYER, Wishes(time_zone="../etc"))
    with pytest.raises(UnknownList):
        alone.second_looks.set_wishes(PLAYER, Wishes(course="no_such"))
    assert alone.second_looks.wishes(PLAYER) == Wishes()


def test_a_practical_that_is_over_counts_as_none() -> None:
    alone = Alone()
    alone.second_looks.set_wishes(PLAYER, Wishes(exam_date=date(2031, 1, 1)))
    assert alone.second_looks.today(PLAYER).mind.aim.exam_on is None


def test_a_browsers_clock_is_believed_within_reason() -> None:
    alone = Alone()
    room = alone.review(plan_of(3), wrong=(1,))
    look = alone.second_looks.second_look(PLAYER, room.id)[1][0]
    made, received = look.made_at, look.made_at + timedelta(days=2)
    assert believed(look, made + timedelta(days=1), received) == made + timedelta(days=1)
    assert believed(look, made - timedelta(days=400), received) == made
    assert believed(look, received + timedelta(days=400), received) == received


def test_an_answer_that_does_not_fit_counts_as_blank() -> None:
    alone = Alone()
    room = alone.review(plan_of(3), wrong=(1,))
    look = alone.second_looks.second_look(PLAYER, room.id)[1][0]
    odd = alone.answer_to(look, right=True)
    misfit = type(odd)(
        look=look.id,
        choice=("J",),
        typed=("too", "many", "words"),
        certainty=None,
        took_ms=9000,
        answered_at=odd.answered_at,
        received_at=odd.received_at,
    )
    judged = alone.second_looks.answer(PLAYER, [misfit])[0].judged
    assert judged is not None
    assert (judged.verdict, judged.mark) == ("none", 0.0)
