"""The report on wrong options: nine of ten come from a source that teaches, and no rule is broken."""

from dataclasses import replace

import pytest

from quizroom.questions.cues import is_short_beside
from quizroom.questions.report import report_lines, report_of, total_of
from tests.questions.lists import COURSES, all_items, items_of_course, placed_items

WANTED = 0.9
MOST_SHORT = 0.06
"""Keys that are more than a quarter shorter than the mean of the options: 4.6 % when this was written.

The trade suggests none; but where all joints near the elbow have long names, it is asked for all the same.
"""


@pytest.mark.parametrize("course", COURSES)
def test_in_every_list_nine_of_ten_wrong_options_come_from_the_first_seven_sources(course: str) -> None:
    reports = report_of(items_of_course(course))
    assert total_of(reports).first_seven >= WANTED
    assert [one.family for one in reports if one.teaching < WANTED] == []
    assert {one.family for one in reports if one.first_seven < WANTED} <= {"root"}


def test_in_every_family_nine_of_ten_teach() -> None:
    """By the first seven, and for segments by those that are disjoint and next, as the trade names them."""
    reports = report_of((*all_items(), *placed_items()))
    assert [one.family for one in reports if one.teaching < WANTED] == []
    assert [one.family for one in reports if one.first_seven < WANTED] == ["root"]


def test_no_wrong_options_are_all_merely_of_the_region() -> None:
    single = [item for item in all_items() if item.format == "one_best"]
    wrong = [{option.source for option in item.options if option.source != "key"} for item in single]
    assert {"same_region"} not in wrong


def test_one_of_two_wrong_options_is_never_merely_of_the_region() -> None:
    single = [item for item in all_items() if item.format == "one_best" and len(item.options) == 3]
    sources = [{option.source for option in item.options} for item in single]
    assert [found for found in sources if "same_region" in found] == []


def test_few_keys_are_much_shorter_than_the_other_options() -> None:
    single = [item for item in all_items() if item.format == "one_best"]
    short = 0
    for item in single:
        texts = {option.letter: option.text for option in item.options}
        key = texts.pop(item.key[0])
        short += is_short_beside(key, texts.values())
    assert short / len(single) < MOST_SHORT


def test_the_report_counts_every_item_and_every_wrong_option_once() -> None:
    items = items_of_course("arm_and_forearm")
    total = total_of(report_of(items))
    assert total.items == len(items)
    assert total.sources.total() == sum(len(item.options) - len(item.key) for item in items if item.options)
    assert not total.broken


def test_the_report_is_a_line_for_each_family_and_one_for_all() -> None:
    items = items_of_course("intro_upper_limb")
    head, *lines, last = report_lines(report_of(items))
    assert head.split()[:2] == ["family", "items"]
    assert [line.split()[0] for line in lines] == [*dict.fromkeys(item.family for item in items), "all"]
    assert last == "Rules of item writing broken: none."


def test_broken_rules_are_named() -> None:
    item = items_of_course("intro_upper_limb")[0]
    broken = replace(item, stem="Not this")
    assert "stem_is_positive 1" in list(report_lines(report_of([broken])))[-1]
