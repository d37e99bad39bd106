"""The content that comes with the program."""

import pytest

from quizroom.knowledge.anatomy import joints_crossed
from quizroom.knowledge.compose import record_of
from quizroom.knowledge.course import FAMILIES
from quizroom.knowledge.lexicon import lexicon, terms_of
from quizroom.knowledge.load import content_folder, load_content
from quizroom.knowledge.report import findings_of, report
from tests.shipped import content


def test_it_breaks_no_rule() -> None:
    loaded = load_content(content_folder())
    assert findings_of(loaded) == (), report(loaded, findings_of(loaded))


def test_every_muscle_has_a_record_that_is_filled() -> None:
    catalogue = content()
    for muscle in catalogue.muscles:
        record = record_of(catalogue, muscle)
        assert record.heads
        assert record.nerves
        assert record.arteries
        assert record.sources
        assert all(path.path[-1] == path.nerve for path in record.nerves)
        assert bool(record.joints) == bool(
            joints_crossed(catalogue, muscle) or catalogue.muscles[muscle].actions
        )


def test_every_term_leads_back_to_its_concept() -> None:
    catalogue = content()
    words = lexicon(catalogue)
    assert {term for terms in words.values() for term in terms} == set(terms_of(catalogue))
    assert "" not in words


def test_it_is_as_large_as_a_regional_course_needs() -> None:
    assert len(content().muscles) >= 220
    assert len(content().landmarks) >= 350
    assert len(content().lookalikes) >= 100


def test_the_regional_list_has_every_muscle_and_every_family() -> None:
    course = content().courses["regional_gross_anatomy"]
    assert set(course.muscles) == set(content().muscles)
    assert set(course.families) == set(FAMILIES)


@pytest.mark.parametrize("course", ["intro_ap", "kinesiology", "regional_gross_anatomy", "arm_and_forearm"])
def test_the_four_lists_are_shipped(course: str) -> None:
    assert content().courses[course].description
