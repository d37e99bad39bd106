"""Stems, options and reasons of every item, as the trade's rules of item writing want them."""

import re
from functools import cache

import pytest

from quizroom.questions.cues import clangs, stands_out_in_length, stems_of
from quizroom.questions.deck import items_of
from quizroom.questions.model import Item
from tests.questions.lists import COURSES, examined, syllabus

ODD = re.compile(r"  |\(\)|_|\bthe the\b|\bof of\b|\s[.,;?]|;;|\.\.|\bNone\b|\b(a|an)\s(the|of)\b")
PLURAL_HEAD = re.compile(
    r"^The (?!prime)[a-z ]*(branches|arteries|joints|heads) (of [^,;.]* )?(is|supplies|lies) "
)


@cache
def all_items() -> tuple[Item, ...]:
    return tuple(
        item
        for course in COURSES
        for family in examined(course)
        for item in items_of(syllabus(course), family, 3)
    )


def texts(item: Item) -> list[str]:
    """Every sentence that an item may show."""
    return [item.stem, item.why.text, *(option.reason.text for option in item.options)]


def test_a_stem_is_one_short_question_or_asks_for_a_name() -> None:
    for item in all_items():
        assert item.stem.endswith("?") or (item.stem.startswith("Name ") and item.stem.endswith(".")), (
            item.stem
        )
        assert len(item.stem.split()) <= 25, item.stem


def test_no_stem_is_negative_and_no_option_is_all_or_none() -> None:
    for item in all_items():
        assert not re.search(r"\b(not|except|false|incorrect)\b", item.stem, re.IGNORECASE), item.stem
        assert not any(re.search(r"\b(all|none) of\b", option.text) for option in item.options)


def test_no_stem_ends_in_an_article_that_tells_the_key() -> None:
    assert not any(re.search(r"\b(a|an|the)\?$", item.stem) for item in all_items())


def test_every_option_has_a_reason_of_its_own_in_a_sentence() -> None:
    for item in all_items():
        for option in item.options:
            assert option.reason.text[0].isupper(), option
            assert option.reason.text.endswith("."), option
        assert item.why.text.endswith(".")


def test_a_reason_names_the_thing_that_was_chosen_or_what_was_asked_about() -> None:
    for item in all_items():
        for option in item.options:
            named = option.text.casefold() in option.reason.text.casefold()
            assert named or (option.letter in item.key and item.direction.startswith("muscle_to_")), (
                item.stem,
                option,
            )


def test_reasons_rest_on_sources_unless_nothing_is_recorded() -> None:
    for item in all_items():
        assert item.why.sources, item.stem
        for option in item.options if item.direction != "meaning_to_movement" else ():
            bare = re.search(r"no muscle|not recorded|only smaller places", option.reason.text, re.IGNORECASE)
            assert option.reason.sources or bare, option


def test_sentences_are_clean() -> None:
    for item in all_items():
        for text in texts(item):
            assert not ODD.search(text), text
            assert not PLURAL_HEAD.search(text), text


def test_the_wrong_options_echo_the_question_if_the_key_does() -> None:
    for item in all_items():
        stem = stems_of(item.stem)
        echoes = {option.letter: clangs(stem, stems_of(option.text)) for option in item.options}
        keys = [letter for letter in item.key if echoes[letter]]
        if 2 * len(keys) > len(item.key):
            assert any(echoes[letter] for letter in set(echoes) - set(item.key)), item.stem


def test_the_key_does_not_stand_out_by_its_length() -> None:
    single = [item for item in all_items() if item.format == "one_best"]
    longest = 0
    for item in single:
        key = next(option.text for option in item.options if option.letter in item.key)
        others = [option.text for option in item.options if option.letter not in item.key]
        assert not stands_out_in_length(key, others), item.stem
        longest += len(key) > max(map(len, others))
    assert longest / len(single) < 0.3


def test_nine_wrong_options_of_ten_come_from_a_source_that_teaches() -> None:
    sources = [option.source for item in all_items() for option in item.options if option.source != "key"]
    assert sources.count("same_region") / len(sources) < 0.15


@pytest.mark.parametrize(
    "stem,echo,silent",
    [
        ("the coracoid process", "coracobrachialis", "brachialis"),
        ("flexor carpi ulnaris", "ulnar nerve", "median nerve"),
        ("brachioradialis", "radial nerve", "ulnar nerve"),
        ("flexor carpi radialis", "flexion", "extension"),
        ("supinator", "supination", "pronator teres"),
        ("tibialis anterior", "tibial nerve", "anterior border"),
    ],
)
def test_an_echo_is_a_shared_stem_of_telling_words(stem: str, echo: str, silent: str) -> None:
    assert clangs(stems_of(stem), stems_of(echo))
    assert not clangs(stems_of(stem), stems_of(silent))
