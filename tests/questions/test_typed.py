"""Typed answers are marked by meaning. Check values: the trade's own table (computed, no source)."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.questions.model import Spelling
from quizroom.questions.typed import verdict
from tests.questions.typed_samples import LEXICON, typed_item


@pytest.mark.parametrize(
    "concept,text",
    [
        ("gastrocnemius", "gastrocnemeus"),
        ("sternocleidomastoid", "sternoclidomastoid"),
        ("sartorius", "satorius"),
        ("flexor_carpi_radialis", "flexor carpi radialus"),
        ("gluteus_minimus", "gluteus minumus"),
        ("brachioradialis", "brachoradialis"),
        ("latissimus_dorsi", "lattisimus dorsi"),
    ],
)
def test_a_harmless_misspelling_counts(concept: str, text: str) -> None:
    found = verdict(typed_item(concept), text)
    assert (found.kind, found.concept) == ("right", concept)
    assert "spelling" in found.because


@pytest.mark.parametrize(
    "concept,text,other",
    [
        ("abductor_hallucis", "adductor hallucis", "adductor_hallucis"),
        ("ilium", "ileum", "ileum"),
        ("peroneal_nerve", "perineal nerve", "perineal_nerve"),
        ("biceps_brachii", "Triceps brachii", "triceps_brachii"),
    ],
)
def test_another_term_is_wrong_however_near_it_is(concept: str, text: str, other: str) -> None:
    found = verdict(typed_item(concept), text)
    assert (found.kind, found.concept) == ("wrong", other)
    assert found.because == f"This is {text.lower()}."


@pytest.mark.parametrize(
    "concept,text",
    [
        ("abductor_hallucis", "abuctor hallucis"),  # 1 from it, 2 from adductor hallucis
        ("ilium", "illium"),  # 1 and 2
        ("biceps_brachii", "biceps"),  # a part of the name
        ("extensor_pollicis_longus", "extensor pollicis longis"),  # a word that must be exact
    ],
)
def test_what_is_in_doubt_goes_to_the_host(concept: str, text: str) -> None:
    found = verdict(typed_item(concept), text)
    assert (found.kind, found.concept) == ("doubtful", concept)
    assert "host decides" in found.because


@pytest.mark.parametrize("text", ["", "   ", "the", "no idea", "banana"])
def test_anything_else_is_wrong(text: str) -> None:
    assert verdict(typed_item("biceps_brachii"), text).kind == "wrong"
    assert verdict(typed_item("biceps_brachii"), text).concept == ""


@pytest.mark.parametrize(
    "text", ["M. Biceps Brachii", "the biceps-brachii muscle", "BICEPS  BRACHII", "musculus bíceps brachii"]
)
def test_case_accents_hyphens_and_filler_words_do_not_count(text: str) -> None:
    assert verdict(typed_item("biceps_brachii"), text).kind == "right"


@pytest.mark.parametrize("spelling,kind", [("accept", "right"), ("half", "half"), ("exact", "wrong")])
def test_the_course_says_what_a_misspelling_is_worth(spelling: Spelling, kind: str) -> None:
    item = typed_item("sartorius", spelling)
    assert verdict(item, "satorius").kind == kind
    assert verdict(item, "sartorius").kind == "right"


CONCEPTS = st.sampled_from(sorted(LEXICON))


@given(CONCEPTS, CONCEPTS, st.sampled_from(["accept", "half"]))
def test_no_exact_term_is_ever_accepted_for_another_concept(one: str, other: str, spelling: Spelling) -> None:
    for term in LEXICON[other]:
        assert verdict(typed_item(one, spelling), term).kind == ("right" if one == other else "wrong")


@given(CONCEPTS, st.text(max_size=30))
def test_any_words_get_a_verdict_with_a_sentence(concept: str, text: str) -> None:
    found = verdict(typed_item(concept), text)
    assert found.because.endswith(".")
    assert found.concept in ("", *LEXICON)
