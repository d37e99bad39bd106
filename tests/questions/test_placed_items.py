"""Orderings and matchings: fair place by place, and the oracle sees it when they are not."""

from collections import Counter
from collections.abc import Iterator
from dataclasses import asdict, replace
from functools import cache
from random import Random

from hypothesis import given
from hypothesis import strategies as st

from quizroom.knowledge.model import Course
from quizroom.questions.cues import clangs, stems_of
from quizroom.questions.deck import items_of
from quizroom.questions.model import FAMILIES, Family, Item, Reason
from quizroom.questions.orders import Step, shuffled_options
from quizroom.questions.print import item_as_json
from quizroom.questions.syllabus import syllabus_of
from tests.questions.judging import complaints
from tests.questions.lists import catalogue, placed_items
from tests.questions.oracle import Oracle
from tests.questions.source_text import read_text

STEPS = tuple(Step(concept=one, text=one, reason=Reason(text=one)) for one in "pqrst")
NEW: tuple[Family, ...] = ("ordering", "matching")


@cache
def whole_list() -> Course:
    """All muscles, their parts by themselves."""
    muscles = tuple(catalogue().muscles)
    return Course(id="all", title="All", muscles=muscles, families=FAMILIES, separate_parts=muscles)


@cache
def whole_body() -> tuple[Item, ...]:
    """Everything that can be put in order or matched."""
    syllabus = syllabus_of(catalogue(), whole_list())
    return tuple(item for family in NEW for item in items_of(syllabus, family, 1))


@cache
def oracle() -> Oracle:
    return Oracle(read_text(), asdict(whole_list()))


def test_every_order_and_every_row_of_the_whole_body_is_strict_by_all_readings() -> None:
    found = [complaint for item in whole_body() for complaint in complaints(oracle(), item_as_json(item))]
    assert found == []
    assert len(whole_body()) > 1000


def test_every_kind_of_order_and_every_theme_is_asked() -> None:
    assert {item.direction for item in (*whole_body(), *placed_items())} == {
        *("nerve_path", "artery_path", "superficial_to_deep", "insertions_along_limb", "way_of_muscle"),
        *("nerve:muscle_to_nerve", "origin:muscle_to_site", "insertion:muscle_to_site"),
        *("action:muscle_to_action", "artery:muscle_to_artery", "look_alike:landmark_to_bone"),
    }


def spoilt(item: Item) -> Iterator[Item]:
    """The same with neighbours in the key exchanged, one pair after another."""
    for place in range(len(item.key) - 1):
        key = list(item.key)
        key[place], key[place + 1] = key[place + 1], key[place]
        yield replace(item, key=tuple(key))


def test_the_oracle_objects_to_any_two_neighbours_exchanged() -> None:
    for item in whole_body()[::20]:
        assert all(complaints(oracle(), item_as_json(wrong)) for wrong in spoilt(item)), item.stem


def test_a_row_does_not_echo_its_key() -> None:
    for item in placed_items():
        texts = {option.letter: option.text for option in item.options}
        for stem, letter in zip(item.stems, item.key, strict=False):
            assert not clangs(stems_of(stem.text), stems_of(texts[letter])), (stem.text, texts[letter])


def test_letters_tell_nothing_of_the_right_order() -> None:
    """Chi-square at each place over four letters; 16.27 is the 0.1 % point for three degrees of freedom."""
    fours = [item for item in whole_body() if item.format == "ordering" and len(item.options) == 4]
    expected = len(fours) / 4
    for place in range(4):
        counts = Counter(item.key[place] for item in fours)
        assert sum((counts[letter] - expected) ** 2 / expected for letter in "ABCD") < 16.27


@given(st.permutations(STEPS), st.integers())
def test_the_order_of_options_comes_from_the_seed_alone(steps: list[Step], seed: int) -> None:
    def printed(ordered: list[Step]) -> list[str]:
        return [one.text for one in shuffled_options(ordered, Random(seed))]  # noqa: S311 - no secret

    assert printed(steps) == printed(list(STEPS))


def test_reasons_are_sentences_with_sources_and_stems_are_short_questions() -> None:
    for item in placed_items():
        keys = [option.reason for option in item.options if option.source == "key"]
        others = [option.reason for option in item.options if option.source != "key"]
        reasons = [item.why, *keys, *(stem.reason for stem in item.stems)]
        assert all(one.text[0].isupper() and one.text.endswith(".") for one in (*reasons, *others)), item
        assert item.direction == "look_alike:landmark_to_bone" or all(one.sources for one in reasons), item
        assert item.stem.endswith("?")
        assert len(item.stem.split()) <= 25


def test_facts_muscles_and_records_belong_together() -> None:
    for item in placed_items():
        assert [record.muscle for record in item.records] == list(item.muscles)
        assert len(set(item.facts)) == len(item.facts) > 0
