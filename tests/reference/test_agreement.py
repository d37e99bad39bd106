"""The whole content against four outside tables of facts (see CREDITS.md), row by row."""

from collections import Counter

import pytest

from tests.reference.allowances import allowances, case_of
from tests.reference.comparison import comparisons
from tests.reference.contents import swapped, turned_round
from tests.reference.counts import counts
from tests.reference.print import HEADINGS, as_text
from tests.reference.rows import TABLES, rows_of
from tests.reference.verdicts import Verdict
from tests.shipped import content

AGREE_AT_LEAST = {
    ("OpenStax", "origin bone"): 185,
    ("OpenStax", "insertion bone"): 128,
    ("OpenStax", "landmark"): 330,
    ("OpenStax", "action"): 135,
    ("OpenStax", "compartment"): 78,
    ("OpenStax", "nerve"): 20,
    ("OpenStax", "artery"): 2,
    ("Uberon", "origin bone"): 75,
    ("Uberon", "insertion bone"): 54,
    ("Uberon", "either bone"): 14,
    ("Uberon", "landmark"): 104,
    ("Uberon", "nerve"): 64,
    ("Uberon", "id"): 351,
    ("Uberon", "name"): 235,
    ("MyoSim", "origin bone"): 95,
    ("MyoSim", "insertion bone"): 102,
    ("MyoSim", "either bone"): 45,
    ("MyoSim", "joint crossed"): 205,
    ("MyoSim", "action"): 280,
    ("head-neck model", "either bone"): 50,
    ("head-neck model", "joint crossed"): 57,
    ("head-neck model", "action"): 80,
}
TOO_VAGUE = {
    ("Diaphragm", "Thoracic cavity: Compression; expansion"),
    ("Orbicularis oris", "Lips: Multiple"),
    ("Buccinator", "Cheeks: Lateral"),
    ("Superficial transverse perineal", "Perineal body: None"),
}
"""Rows of the book that say nothing which can be held against one muscle of ours."""


def test_every_disagreement_is_explained() -> None:
    cases = {case_of(one) for one in comparisons(content()) if one.verdict == "disagrees"}
    assert cases - allowances().keys() == set(), "unexplained disagreement"
    assert allowances().keys() - cases == set(), "allowed, but no disagreement any more"


def test_every_explanation_names_a_second_source() -> None:
    assert [case for case, one in allowances().items() if not one.reason or not one.second_source] == []


@pytest.mark.parametrize("source, aspect", AGREE_AT_LEAST)
def test_enough_rows_agree(source: str, aspect: str) -> None:
    agree = {(line.source, line.aspect): line.agree for line in counts(content())}
    assert agree[source, aspect] >= AGREE_AT_LEAST[source, aspect]


def test_no_aspect_of_a_source_goes_uncounted() -> None:
    assert {(line.source, line.aspect) for line in counts(content())} == set(AGREE_AT_LEAST)


@pytest.mark.parametrize("table", TABLES)
def test_every_row_about_a_muscle_of_ours_is_judged(table: str) -> None:
    judged = {one.row for one in comparisons(content()) if one.table == table}
    assert judged == set(rows_of(table))


def test_the_book_is_understood_but_for_a_few_vague_rows() -> None:
    not_compared = {
        (one.row.muscle, one.row.value)
        for one in comparisons(content())
        if (one.table, one.verdict) == ("openstax_ap2e", "not comparable")
    }
    assert not_compared == TOO_VAGUE


def test_records_at_the_wrong_muscle_would_be_found() -> None:
    verdicts = Counter((one.table, one.verdict) for one in comparisons(swapped(content())))
    assert all(_share(verdicts, table, "disagrees") > 0.7 for table in TABLES)


def test_actions_called_their_opposites_would_be_found() -> None:
    acting = (one for one in comparisons(turned_round(content())) if one.aspect == "action")
    verdicts = Counter((one.table, one.verdict) for one in acting)
    tables = ("openstax_ap2e", "myosim_moment_arms", "opensim_neck")
    assert all(_share(verdicts, table, "disagrees") > 0.8 for table in tables)


def test_the_counts_are_printed_with_a_sum_for_each_source() -> None:
    text = as_text(counts(content())).splitlines()
    assert all(heading in text[0] for heading in HEADINGS)
    assert [line.split("  ")[0] for line in text[1:] if " all " in line] == list(TABLES.values())


def _share(verdicts: Counter[tuple[str, Verdict]], table: str, verdict: Verdict) -> float:
    """Of the rows that can be compared, the share with this verdict."""
    compared = verdicts[table, "agrees"] + verdicts[table, "disagrees"]
    return verdicts[table, verdict] / compared
