"""What answers tell: rapid ones nothing, slow and unsure ones less, rows of a matching each for itself."""

from dataclasses import replace

import pytest

from quizroom.questions.model import Format, Item
from quizroom.questions.rekeying import Rekeying, rekeyed
from quizroom.room.state import Answer
from quizroom.second_look.sighting import Said, chance_by_guessing, fact_of, is_rapid, row_facts, sightings_of
from tests.room.sample_items import all_formats
from tests.room.samples import NOON
from tests.service.alone import said

BY_FORMAT = {item.format: item for item in all_formats()}


def told(
    item: Item, *, right: bool, took_ms: int = 12_000, certainty: int | None = None, mark: float = -1
) -> Said:
    choice, typed = said(item, right=right)
    answer = Answer(choice=choice, typed=typed, at=NOON)
    known = (1.0 if right else 0.0) if mark < 0 else mark
    return Said(answer=answer, mark=known, took_ms=took_ms, certainty=certainty)


def test_an_item_without_facts_keeps_its_name_when_the_host_keys_more() -> None:
    item = replace(BY_FORMAT["one_best"], facts=())
    keyed = rekeyed(item, Rekeying(key=("A", "B")))
    assert keyed.key != item.key
    assert fact_of(keyed, ()) == fact_of(item, ()) == "nerve/deltoid/-/axillary nerve"


def test_a_rapid_guess_tells_nothing() -> None:
    item = BY_FORMAT["one_best"]
    (sighting,) = sightings_of(item, told(item, right=True, took_ms=300), at=NOON, origin="here")
    assert sighting.evidence is None
    assert is_rapid(item, 499)
    assert not is_rapid(item, 60_000)


def test_slow_and_unsure_answers_that_are_right_could_rather_be_guesses() -> None:
    item = BY_FORMAT["one_best"]
    chances = [
        evidence.by_guessing
        for answer in (
            told(item, right=True),
            told(item, right=True, took_ms=item.seconds * 1000 + 1),
            told(item, right=True, certainty=1),
            told(item, right=True, certainty=3),
        )
        for sighting in sightings_of(item, answer, at=NOON, origin="here")
        if (evidence := sighting.evidence) is not None
    ]
    quick, slow, unsure, sure = chances
    assert quick == sure == pytest.approx(1 / len(item.options))
    assert slow == unsure == pytest.approx(quick + (1 - quick) / 2)


def test_what_only_a_person_could_judge_tells_nothing_but_was_seen() -> None:
    item = BY_FORMAT["typed"]
    answer = replace(told(item, right=False), mark=None)
    (sighting,) = sightings_of(item, answer, at=NOON, origin="here")
    assert sighting.evidence is None
    assert not sighting.missed


def test_a_blank_was_not_known() -> None:
    item = BY_FORMAT["typed"]
    blank = Said(answer=None, mark=0.0, took_ms=60_000)
    (sighting,) = sightings_of(item, blank, at=NOON, origin="here")
    assert sighting.missed
    assert sighting.evidence is not None
    assert not sighting.evidence.right


def test_part_of_the_marks_is_a_softer_miss() -> None:
    item = BY_FORMAT["pick_n"]
    (all_wrong,) = sightings_of(item, told(item, right=False, mark=0.0), at=NOON, origin="here")
    (some_right,) = sightings_of(item, told(item, right=False, mark=0.5), at=NOON, origin="here")
    assert all_wrong.evidence is not None
    assert some_right.evidence is not None
    assert some_right.evidence.by_recall < all_wrong.evidence.by_recall == 1.0


def test_each_row_of_a_matching_is_a_fact_of_its_own() -> None:
    item = BY_FORMAT["matching"]
    choice = ("", *item.key[1:])
    answer = Said(answer=Answer(choice=choice, typed=(), at=NOON), mark=0.5, took_ms=20_000)
    rows = tuple(sightings_of(item, answer, at=NOON, origin="here"))
    assert [row.missed for row in rows] == [True, *([False] * (len(item.key) - 1))]
    assert len({row.fact for row in rows}) == len(item.stems) == len(row_facts(item))


def test_a_look_made_for_one_fact_tells_of_that_one() -> None:
    for item in all_formats():
        (sighting,) = sightings_of(item, told(item, right=True), at=NOON, origin="here", fact="the fact")
        assert sighting.fact == "the fact"


@pytest.mark.parametrize(
    "format_,expected",
    [("typed", 0.0), ("free_list", 0.0), ("one_best", 0.25), ("pick_n", None), ("ordering", None)],
)
def test_guessing_is_reckoned_by_the_number_of_answers(format_: Format, expected: float | None) -> None:
    chance = chance_by_guessing(BY_FORMAT[format_])
    assert 0 <= chance <= 0.5
    if expected is not None:
        assert chance == pytest.approx(expected)
