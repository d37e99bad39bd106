"""What simulated players know, and that what they hand in fits the item."""

from dataclasses import replace
from random import Random
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.rehearsal.skill import Choice, Task, chance_to_know, choice_of, difficulty, task_of, thinking_s

ONE_BEST = Task(
    item="nerve:brachialis",
    round=1,
    format="one_best",
    family="nerve",
    stem="Which nerve supplies brachialis?",
    letters=("A", "B", "C", "D", "E"),
    key=("C",),
    words=("musculocutaneous nerve",),
    other_words=(),
    pick=1,
    seconds=30,
)
PICK_THREE = replace(ONE_BEST, format="pick_n", key=("A", "C", "E"), pick=3)
TYPED = replace(
    ONE_BEST,
    format="typed",
    letters=(),
    key=(),
    other_words=("radial nerve", "ulnar nerve", "axillary nerve"),
)
ORDER = replace(ONE_BEST, format="ordering", letters=("A", "B", "C"), key=("C", "A", "B"), pick=3)
ROWS = replace(ONE_BEST, format="matching", key=("C", "A", "C"), pick=3)
LIST = replace(TYPED, format="free_list", words=("biceps brachii", "brachialis", "coracobrachialis"), pick=3)

ABILITIES = st.floats(-4, 4)
SEEDS = st.integers(0, 10_000)


def dice_of(seed: int) -> Random:
    return Random(seed)  # noqa: S311 - a simulation, no secret


def chosen(task: Task, *, ability: float, seed: int = 1, dice: int = 1) -> Choice:
    return choice_of(task, ability=ability, seed=seed, dice=dice_of(dice))


@given(ABILITIES, SEEDS)
def test_one_best_answer_is_one_of_the_letters(ability: float, dice: int) -> None:
    choice = chosen(ONE_BEST, ability=ability, dice=dice)
    assert len(choice.choice) == 1
    assert set(choice.choice) <= set(ONE_BEST.letters)
    assert not choice.typed


@given(ABILITIES, SEEDS)
def test_an_order_holds_every_letter_and_rows_one_each(ability: float, dice: int) -> None:
    assert sorted(chosen(ORDER, ability=ability, dice=dice).choice) == ["A", "B", "C"]
    rows = chosen(ROWS, ability=ability, dice=dice).choice
    assert len(rows) == 3
    assert set(rows) <= set(ROWS.letters)


def test_who_knows_everything_has_orders_and_rows_right() -> None:
    assert chosen(ORDER, ability=40).choice == ORDER.key
    assert chosen(ROWS, ability=40).choice == ROWS.key


@given(ABILITIES, SEEDS)
def test_a_set_is_answered_with_as_many_letters_as_are_asked_for(ability: float, dice: int) -> None:
    choice = chosen(PICK_THREE, ability=ability, dice=dice).choice
    assert len(set(choice)) == len(choice)
    assert 1 <= len(choice) <= PICK_THREE.pick
    assert set(choice) <= set(PICK_THREE.letters)


@pytest.mark.parametrize("task", [TYPED, LIST])
@given(ability=ABILITIES, dice=SEEDS)
def test_words_are_written_but_no_more_than_are_asked_for(task: Task, ability: float, dice: int) -> None:
    choice = chosen(task, ability=ability, dice=dice)
    assert 1 <= len(choice.typed) <= task.pick
    assert all(choice.typed)
    assert not choice.choice


def test_the_chance_to_know_follows_the_rasch_model() -> None:
    # 1 / (1 + e^(difficulty - ability)); the values are the logistic function's own, from memory
    assert chance_to_know(ability=0.7, difficulty=0.7) == 0.5
    assert chance_to_know(ability=1.0, difficulty=0.0) == pytest.approx(0.7311, abs=1e-4)
    assert chance_to_know(ability=-2.0, difficulty=0.0) == pytest.approx(0.1192, abs=1e-4)


def test_the_able_are_right_more_often() -> None:
    def right(*, above: float) -> int:
        ability = difficulty(ONE_BEST.item, 1) + above
        return sum(chosen(ONE_BEST, ability=ability, dice=dice).choice == ("C",) for dice in range(400))

    # 400 times the model's chance of 0.047, 0.5 and 0.953, with four standard errors to each side
    assert right(above=-3) == pytest.approx(19, abs=17)
    assert right(above=0) == pytest.approx(200, abs=40)
    assert right(above=3) == pytest.approx(381, abs=17)


@given(ABILITIES, SEEDS)
def test_the_same_seed_and_dice_give_the_same_answer(ability: float, seed: int) -> None:
    assert chosen(LIST, ability=ability, seed=seed) == chosen(LIST, ability=ability, seed=seed)


@given(st.floats(0.1, 5), SEEDS)
def test_nobody_thinks_past_the_end_of_the_round(pace: float, dice: int) -> None:
    assert 0 < thinking_s(ONE_BEST, pace=pace, typical_s=9, dice=dice_of(dice)) <= 24
    untimed = replace(ONE_BEST, seconds=None)
    assert thinking_s(untimed, pace=pace, typical_s=9, dice=dice_of(dice)) > 0


def test_the_task_of_a_round_is_read_from_the_desk() -> None:
    asked = {
        "id": "nerve:brachialis",
        "round": 2,
        "format": "typed",
        "family": "nerve",
        "stem": "Name the nerve.",
        "options": [],
        "key_text": ["musculocutaneous nerve"],
        "pick": 1,
        "seconds": None,
        "muscles": ["brachialis"],
    }
    other = {**asked, "id": "nerve:deltoid", "round": 3, "key_text": ["axillary nerve"]}
    desk: dict[str, Any] = {"items": [asked, other]}
    task = task_of(desk, 2)
    assert task.words == ("musculocutaneous nerve",)
    assert task.other_words[0] == "axillary nerve"
    assert all("nerve" in words or "plexus" in words for words in task.other_words)
    assert task.seconds is None
