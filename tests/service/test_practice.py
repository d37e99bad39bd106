"""Sets of practice are dealt once, within limits, and what is missed in them comes back."""

from dataclasses import replace

import pytest

from quizroom.questions.deck import CannotDeal
from quizroom.questions.model import Spelling
from quizroom.service.practice import MOST_SETS_A_DAY, TooManySets, Wanted
from quizroom.service.second_look import UnknownList
from tests.service.alone import PLAYER, Alone

WANTED = Wanted(
    order="one",
    course="upper_limb_regional",
    families=(),
    regions=(),
    rounds=4,
    kind="practice",
    seconds=None,
    typed=True,
    spelling="accept",
)
MOCK = replace(WANTED, order="mock", kind="mock", seconds=60, rounds=10, spelling="exact")


def test_the_same_order_is_dealt_once() -> None:
    practice = Alone().practice
    made = practice.make(PLAYER, WANTED)
    assert practice.make(PLAYER, WANTED) == made == practice.find(PLAYER, made[0].id)
    assert practice.make(PLAYER, replace(WANTED, order="two"))[0].id != made[0].id


def test_orders_without_a_name_are_all_different() -> None:
    practice = Alone().practice
    nameless = replace(WANTED, order="")
    assert practice.make(PLAYER, nameless)[0].id != practice.make(PLAYER, nameless)[0].id


def test_a_mock_practical_is_numbered_and_says_what_it_is() -> None:
    made, looks = Alone().practice.make(PLAYER, MOCK)
    assert made.title == "Mock practical: Upper limb, regional, 10 stations, 60 s each"
    assert [look.place for look in looks] == list(range(1, 11))
    assert {look.item.format for look in looks} == {"typed"}


@pytest.mark.parametrize("spelling,mark", [("exact", 0.0), ("half", 0.5), ("accept", 1.0)])
def test_misspelt_words_count_as_the_player_wished(spelling: Spelling, mark: float) -> None:
    alone = Alone()
    _, looks = alone.practice.make(PLAYER, replace(MOCK, spelling=spelling, families=("nerve",), rounds=12))
    look = next(look for look in looks if look.item.accepted[0].text == "musculocutaneous nerve")
    answer = replace(alone.answer_to(look, right=True), typed=("musculocutanous nerve",))
    judged = alone.second_looks.answer(PLAYER, [answer])[0].judged
    assert judged is not None
    assert judged.mark == mark


def test_a_blank_station_was_not_known_and_its_record_is_told() -> None:
    alone = Alone()
    _, looks = alone.practice.make(PLAYER, MOCK)
    blank = replace(alone.answer_to(looks[0], right=True), typed=(), took_ms=60_000)
    judged = alone.second_looks.answer(PLAYER, [blank])[0].judged
    assert judged is not None
    assert (judged.verdict, judged.mark) == ("none", 0.0)
    assert judged.because


def test_what_is_missed_in_practice_comes_back() -> None:
    alone = Alone()
    _, looks = alone.practice.make(PLAYER, WANTED)
    alone.second_looks.answer(
        PLAYER, [alone.answer_to(look, right=place > 0) for place, look in enumerate(looks)]
    )
    alone.days_later(1)
    (back,) = alone.second_looks.today(PLAYER).looks
    assert set(back.item.facts) <= set(looks[0].item.facts)
    assert back.missed is None


def test_limits_are_kept() -> None:
    practice = Alone().practice
    with pytest.raises(UnknownList):
        practice.make(PLAYER, replace(WANTED, course="no_such"))
    for kind in (WANTED, MOCK):
        with pytest.raises(CannotDeal, match="Choose fewer"):
            practice.make(PLAYER, replace(kind, rounds=60, families=("compartment",), regions=("arm",)))


def test_a_day_allows_so_many_sets() -> None:
    alone = Alone()
    for number in range(MOST_SETS_A_DAY):
        alone.practice.make(PLAYER, replace(WANTED, order=f"order {number}", rounds=1))
    with pytest.raises(TooManySets):
        alone.practice.make(PLAYER, WANTED)
    alone.days_later(2)
    assert alone.practice.make(PLAYER, WANTED)[1]
