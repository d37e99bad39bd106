"""The rules of item writing: each finds what breaks it, and every item of every list keeps them."""

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import pytest

from quizroom.questions import rules
from quizroom.questions.cues import is_short_beside
from quizroom.questions.deck import items_of
from quizroom.questions.model import Item, Option
from tests.questions.lists import REGIONAL, all_items, placed_items, syllabus


@cache
def good_item() -> Item:
    """Four options, the key among the shorter ones."""
    items = items_of(syllabus(REGIONAL), "nerve", 1)
    return next(item for item in items if len(item.options) == 4 and item.direction == "muscle_to_nerve")


def with_stem(stem: str) -> Item:
    return replace(good_item(), stem=stem)


def with_texts(*texts: str) -> Item:
    """The item with other option texts; the first is the key's."""
    item = good_item()
    key = [option for option in item.options if option.letter in item.key]
    others = [option for option in item.options if option.letter not in item.key]
    options = [replace(one, text=text) for one, text in zip(key + others, texts, strict=False)]
    return replace(item, options=tuple(sorted(options, key=lambda option: option.letter)))


def with_concepts(change: Callable[[Option], str]) -> Item:
    item = good_item()
    return replace(item, options=tuple(replace(one, concept=change(one)) for one in item.options))


BAD: dict[rules.Rule, Item] = {
    rules.stem_is_one_question: with_stem("The nerve of brachialis"),
    rules.stem_is_short: with_stem("Which " + "very " * 25 + "nerve?"),
    rules.stem_is_positive: with_stem("Which of these nerves does NOT supply brachialis?"),
    rules.articles_are_neutral: with_stem("The nerve of the diaphragm is a?"),
    rules.options_are_homogeneous: with_concepts(lambda one: one.concept + "/part" * (one.letter == "A")),
    rules.options_differ: with_texts("one nerve", "another nerve", "Another nerve", "a third"),
    rules.options_claim_no_others: with_texts("one nerve", "none of these", "a third", "a fourth"),
    rules.options_are_enough: replace(good_item(), options=good_item().options[:2]),
    rules.key_is_not_the_longest: with_texts("a rather long nerve indeed", "short", "brief", "tiny"),
    rules.key_does_not_echo_the_stem_alone: replace(
        with_texts("ulnar nerve", "median nerve", "radial nerve", "axillary nerve"),
        stem="Which of these nerves supplies flexor carpi ulnaris?",
    ),
}


def test_every_rule_has_an_example_that_breaks_it() -> None:
    assert set(BAD) == set(rules.ITEM_RULES)


@pytest.mark.parametrize("rule", rules.ITEM_RULES, ids=lambda rule: rule.__name__)
def test_a_rule_passes_a_good_item_and_finds_a_bad_one(rule: rules.Rule) -> None:
    assert rule(good_item()) == ""
    assert rule(BAD[rule])


def test_every_item_of_every_list_keeps_every_rule() -> None:
    items = (*all_items(), *placed_items())
    assert [(item.stem, breach) for item in items for breach in rules.breaches(item)] == []


SHORT_KEYS = 0.08
"""Where all other names are long, a key is short beside them."""


def test_few_keys_are_by_more_than_a_quarter_shorter_than_their_options() -> None:
    single = [item for item in all_items() if item.format == "one_best"]
    short = sum(is_short_beside(*key_and_others(item)) for item in single)
    assert short / len(single) < SHORT_KEYS


def key_and_others(item: Item) -> tuple[str, list[str]]:
    """The texts of the key and of the other options."""
    key = next(option.text for option in item.options if option.letter in item.key)
    return key, [option.text for option in item.options if option.letter not in item.key]
