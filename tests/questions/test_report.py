"""The report on wrong options: nine of ten come from a source that teaches, and no rule is broken."""

from dataclasses import replace

import pytest

from quizroom.questions.report import report_lines, report_of, total_of
from tests.questions.lists import COURSES, all_items, items_of_course

WANTED = 0.9
WANTED_OF_ONE_LIST = 0.88
"""A short list has fewer look-alikes and neighbours of its own."""


def test_nine_of_ten_wrong_options_teach() -> None:
    assert total_of(report_of(all_items())).teaching >= WANTED


@pytest.mark.parametrize("course", COURSES)
def test_nearly_as_many_teach_in_every_list_and_most_in_every_family(course: str) -> None:
    reports = report_of(items_of_course(course))
    assert total_of(reports).teaching >= WANTED_OF_ONE_LIST
    assert all(one.teaching > 0.5 for one in reports)


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
