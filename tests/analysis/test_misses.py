"""What was missed: only what may be told, by the marks as they stand, the most certain first."""

from dataclasses import replace

import pytest

from quizroom.analysis.misses import Played, misses, mistook_look_alike, played_rounds
from quizroom.questions.model import Item, Option, Reason
from quizroom.room.commands import (
    CloseRound,
    EndReview,
    OpenRound,
    RuleOnWords,
    ShowRecord,
    StrikeItem,
    SubmitAnswer,
)
from quizroom.room.state import Answer, Room, Round
from tests.room.sample_items import all_formats, one_best
from tests.room.samples import NOON, answering, gathered, ordered, says
from tests.service.alone import said

ITEMS = tuple(replace(item, facts=(), records=()) for item in all_formats())
"""No record of one tells the key of another, so that nothing waits."""


def reviewed(right: tuple[bool, ...], *, shown: bool = True) -> Room:
    """A review over as many items, answered by ada alone; the last round was closed."""
    room = gathered(*ITEMS)
    for number, is_right in enumerate(right, 1):
        room = ordered(room, OpenRound(round=number))
        choice, typed = said(room.rounds[-1].item, right=is_right)
        answered = SubmitAnswer(player="ada", round=number, choice=choice, typed=typed)
        room = ordered(room, answered, CloseRound(round=number, by_host=True))
        if shown:
            room = ordered(room, ShowRecord(round=number))
    return room


def numbers(rounds: tuple[Played, ...]) -> list[int]:
    return [one.current.number for one in rounds]


def test_exactly_the_wrong_ones_are_missed() -> None:
    room = reviewed((True, False, True, False))
    assert sorted(numbers(misses(played_rounds(room, "ada")))) == [2, 4]


def test_who_did_not_answer_missed_it_too_but_later() -> None:
    room = reviewed((True, False))
    assert numbers(misses(played_rounds(room, "bo"))) == [1, 2]
    assert all(one.mark is None for one in played_rounds(room, "bo"))


def test_closed_rounds_are_told_once_explained_or_over() -> None:
    room = reviewed((False,), shown=False)
    assert played_rounds(room, "ada") == ()
    assert numbers(played_rounds(ordered(room, EndReview()), "ada")) == [1]


def test_an_open_round_is_not_told() -> None:
    room = ordered(reviewed((False,)), OpenRound(round=2))
    assert numbers(played_rounds(room, "ada")) == [1]


def test_a_round_that_would_tell_the_key_of_a_later_one_comes_after_that() -> None:
    later = replace(one_best("again"), facts=("fact of radial nerve",))
    room = ordered(answering(one_best(), later), says("ada", "A"), CloseRound(round=1, by_host=True))
    room = ordered(room, ShowRecord(round=1))
    assert played_rounds(room, "ada") == ()
    assert numbers(played_rounds(ordered(room, EndReview()), "ada")) == [1]
    assert numbers(played_rounds(ordered(room, OpenRound(round=2)), "ada")) == [1]


def test_struck_items_are_left_out() -> None:
    room = ordered(reviewed((False, False)), StrikeItem(round=1))
    assert numbers(misses(played_rounds(room, "ada"))) == [2]


def test_a_seat_that_is_not_there_has_played_nothing() -> None:
    assert played_rounds(reviewed((False,)), "nobody") == ()


def test_words_that_the_host_accepts_are_not_missed() -> None:
    place = next(place for place, item in enumerate(ITEMS, 1) if item.format == "typed")
    room = reviewed(tuple(number != place for number in range(1, place + 1)))
    assert numbers(misses(played_rounds(room, "ada"))) == [place]
    room = ordered(room, RuleOnWords(round=place, words="nothing known", accept=True))
    assert misses(played_rounds(room, "ada")) == ()


def test_the_most_certain_comes_first_then_look_alikes_then_the_order_asked() -> None:
    plain = [lettered(number) for number in range(1, 6)]
    rounds = (
        wrong(plain[0], "B"),
        wrong(plain[1], "A"),  # a look-alike
        replace(wrong(plain[2], "B"), certainty=3),
        replace(wrong(plain[3], "B"), certainty=1),
        replace(wrong(plain[4], "B"), answer=None, mark=None),
    )
    assert numbers(misses(rounds)) == [3, 2, 1, 4, 5]


def test_a_look_alike_is_known_by_where_the_option_came_from() -> None:
    one = lettered(1).item
    assert mistook_look_alike(one, answer("A"))
    assert not mistook_look_alike(one, answer("B"))
    assert not mistook_look_alike(one, answer("C"))


@pytest.mark.parametrize("item", ITEMS, ids=lambda item: item.format)
def test_any_format_can_be_looked_at(item: Item) -> None:
    choice, typed = said(item, right=False)
    assert mistook_look_alike(item, Answer(choice=choice, typed=typed, at=NOON)) in (True, False)


def answer(letter: str) -> Answer:
    return Answer(choice=(letter,), typed=(), at=NOON)


def wrong(current: Round, letter: str) -> Played:
    return Played(current=current, answer=answer(letter), mark=0.0, certainty=None)


def lettered(number: int) -> Round:
    """A round whose option A is a look-alike, B another wrong one, C the key."""
    options = (
        Option(letter="A", text="a", concept="a", reason=Reason(text="a"), source="look_alike"),
        Option(letter="B", text="b", concept="b", reason=Reason(text="b"), source="same_region"),
        Option(letter="C", text="c", concept="c", reason=Reason(text="c"), source="key"),
    )
    base = next(item for item in ITEMS if item.format == "one_best")
    item = replace(base, options=options, key=("C",))
    return Round(number=number, item=item, opened_at=NOON, closes_at=None, limit_ms=None)
