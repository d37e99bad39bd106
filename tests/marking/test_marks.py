"""What an answer is worth."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.marking import mark_of
from quizroom.questions.model import Item, Spelling
from quizroom.room.state import Answer
from tests.room.sample_items import free_list, one_best, pick_three, typed
from tests.room.samples import NOON


def chosen(*letters: str) -> Answer:
    return Answer(choice=letters, typed=(), at=NOON)


def written(*words: str) -> Answer:
    return Answer(choice=(), typed=words, at=NOON)


# Hits and wrong picks of a set of three, and the mark to three places.
# Common practice, no source.
PICK_THREE = [
    ("ACE", 1.0),  # 3 + 0
    ("AC", 0.667),  # 2 + 0
    ("ABC", 0.333),  # 2 + 1
    ("ABD", 0.0),  # 1 + 2
    ("ABCE", 0.667),  # 3 + 1; the room takes three letters at most, the formula any number
]


@pytest.mark.parametrize("letters,mark", PICK_THREE)
def test_a_set_is_marked_by_hits_less_wrong_picks(letters: str, mark: float) -> None:
    assert round(mark_of(pick_three(key="ACE"), chosen(*letters)), 3) == mark


@pytest.mark.parametrize("letters,mark", [("A", 0.333), ("B", 0.0), ("BD", 0.0), ("AB", 0.0)])
def test_a_set_is_never_worth_less_than_nothing(letters: str, mark: float) -> None:
    assert round(mark_of(pick_three(key="ACE"), chosen(*letters)), 3) == mark


@pytest.mark.parametrize("letter,mark", [("A", 0), ("B", 1), ("C", 0), ("D", 0)])
def test_one_best_answer_is_right_or_wrong(letter: str, mark: float) -> None:
    assert mark_of(one_best(key="B"), chosen(letter)) == mark


@pytest.mark.parametrize("item", [one_best(), pick_three(), typed(), free_list()])
def test_no_answer_has_no_mark(item: Item) -> None:
    assert mark_of(item, None) == 0


@pytest.mark.parametrize(
    "words,mark",
    [
        (("axillary nerve",), 1.0),
        (("Axillary",), 0.0),  # doubtful: the host decides, until then it counts nothing
        (("circumflex nerve",), 1.0),  # a synonym
        (("axilary nerve",), 0.5),  # misspelt, where the course gives half a mark
        (("radial nerve",), 0.0),
        (("musculocutaneous nerve",), 0.0),
    ],
)
def test_typed_words_are_marked_by_what_they_name(words: tuple[str, ...], mark: float) -> None:
    assert mark_of(typed(), written(*words)) == mark


@pytest.mark.parametrize("spelling,mark", [("exact", 0.0), ("half", 0.5), ("accept", 1.0)])
def test_the_course_says_what_a_misspelling_is_worth(spelling: Spelling, mark: float) -> None:
    item = replace(typed(), spelling=spelling)
    assert mark_of(item, written("axilary nerve")) == mark
    assert mark_of(item, written("axillary nerve")) == 1


@pytest.mark.parametrize(
    "words,mark",
    [
        (("coracobrachialis", "biceps brachii", "brachialis"), 1.0),
        (("brachialis", "biceps brachii"), 0.667),
        (("brachialis", "biceps brachii", "triceps brachii"), 0.333),
        (("brachialis", "brachialis", "Brachialis muscle"), 0.333),  # the same thing counts once
        (("brachialis", "brachialis anticus"), 0.333),  # so does its synonym
        (("brachialis", "triceps brachii", "triceps brachii"), 0.0),
        (("brachialis", "biceps brachii", "deltoideus x"), 0.333),
        (("brachialis", "brachialis anticis"), 0.333),  # right and misspelt: the better of the two
    ],
)
def test_a_typed_list_is_marked_like_a_set(words: tuple[str, ...], mark: float) -> None:
    assert round(mark_of(free_list(), written(*words)), 3) == mark


@pytest.mark.parametrize("wrong", ["triceps brachii", "quite other words"])
def test_the_same_wrong_thing_twice_costs_no_more_than_once(wrong: str) -> None:
    once = mark_of(free_list(), written("brachialis", "biceps brachii", wrong))
    assert mark_of(free_list(), written("brachialis", "biceps brachii", wrong, wrong.upper())) == once > 0


@given(st.sets(st.sampled_from("ABCDE")))
def test_every_mark_of_a_set_is_a_share_and_more_hits_never_cost(letters: set[str]) -> None:
    item = pick_three(key="ACE")
    mark = mark_of(item, chosen(*sorted(letters)))
    assert 0 <= mark <= 1
    for hit in {"A", "C", "E"} - letters:
        assert mark_of(item, chosen(*sorted({*letters, hit}))) >= mark


@given(st.lists(st.text(max_size=30), max_size=3))
def test_any_words_at_all_can_be_marked(words: list[str]) -> None:
    assert 0 <= mark_of(free_list(), written(*words)) <= 1
