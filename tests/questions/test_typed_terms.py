"""Typed words against the whole lexicon. Check values: the trade's own table (computed, no source)."""

from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.knowledge.lexicon import Term, terms_of
from quizroom.knowledge.model import Course
from quizroom.knowledge.terms import normalise
from quizroom.questions.syllabus import Syllabus, syllabus_of
from quizroom.questions.typed import Verdict, verdict
from quizroom.questions.typed_terms import TypedTerms, plain_terms
from tests.questions.lists import catalogue

TERMS = [term for term in terms_of(catalogue()) if term.exact]
CONCEPTS = sorted({term.concept for term in TERMS})


@cache
def with_wishes(**wishes: object) -> Syllabus:
    """No list at all, with the wishes of a course."""
    course = Course(id="none", title="No list", muscles=(), families=(), **wishes)  # type: ignore[arg-type] # as given
    return syllabus_of(catalogue(), course)


@cache
def terms_for(concept: str, spelling: str = "accept") -> TypedTerms:
    return plain_terms(with_wishes(spelling=spelling), concept)


def judged(text: str, concept: str, **wishes: object) -> Verdict:
    return verdict(plain_terms(with_wishes(**wishes), concept, text), text)


@pytest.mark.parametrize(
    "text,concept",
    [
        ("gastrocnemeus", "gastrocnemius"),
        ("sternoclidomastoid", "sternocleidomastoid"),
        ("satorius", "sartorius"),
        ("flexor carpi radialus", "flexor_carpi_radialis"),
        ("gluteus minumus", "gluteus_minimus"),
        ("brachoradialis", "brachioradialis"),
        ("lattisimus dorsi", "latissimus_dorsi"),
    ],
)
def test_a_harmless_misspelling_counts_among_all_terms_of_the_body(text: str, concept: str) -> None:
    assert judged(text, concept).kind == "right"
    assert judged(text, concept, spelling="half").kind == "half"
    assert judged(text, concept, spelling="exact").kind == "wrong"


@pytest.mark.parametrize(
    "text,concept",
    [
        ("medial epicondyle", "humerus.medial_epicondyle"),
        ("medial epicondyle", "femur.medial_epicondyle"),
        ("coronoid process", "ulna.coronoid_process"),
        ("anterior tubercles of C3-6", "cervical_vertebrae.anterior_tubercles_c3_c6"),
        ("spinous processes of T7 through T12", "thoracic_vertebrae.spinous_processes_t7_t12"),
        ("upper fibres of trapezius", "trapezius/descending_part"),
        ("long head biceps femoris", "biceps_femoris/long_head"),
        ("musculo-cutaneous nerve", "musculocutaneous_nerve"),
        ("n. fibularis communis", "common_fibular_nerve"),
        ("radial n.", "radial_nerve"),
    ],
)
def test_what_nobody_would_misread_is_right_in_the_strictest_course(text: str, concept: str) -> None:
    """Latin and English words, hyphens and plain names are always taken (the trade's rules of marking)."""
    assert judged(text, concept, spelling="exact").kind == "right"


@pytest.mark.parametrize(
    "text,concept", [("coronoid process", "scapula.coracoid_process"), ("adductor", "abductor_hallucis")]
)
def test_a_name_that_several_share_is_no_misspelling_of_another(text: str, concept: str) -> None:
    """Coracoid and coronoid are two letters apart (the trade's table, computed)."""
    assert judged(text, concept).kind == "wrong"


@pytest.mark.parametrize("bone", ["radius", "ulna"])
def test_a_name_that_two_of_a_limb_share_goes_to_the_host(bone: str) -> None:
    assert judged("styloid process", f"{bone}.styloid_process").kind == "doubtful"


@pytest.mark.parametrize(
    "text,concept,other",
    [
        ("adductor hallucis", "abductor_hallucis", "adductor_hallucis"),
        ("perineal nerve", "common_fibular_nerve", "perineal_nerve"),
        ("trapezium", "trapezius", "trapezium"),
    ],
)
def test_another_term_is_wrong_and_told_what_it_is(text: str, concept: str, other: str) -> None:
    found = judged(text, concept)
    assert (found.kind, found.concept) == ("wrong", other)
    assert text in found.because.casefold()


@pytest.mark.parametrize(
    "text,concept", [("abuctor hallucis", "abductor_hallucis"), ("biceps", "biceps_brachii")]
)
def test_what_is_too_near_to_another_term_goes_to_the_host(text: str, concept: str) -> None:
    assert judged(text, concept).kind == "doubtful"


@pytest.mark.parametrize("specificity,kind", [("exact", "wrong"), ("half", "half"), ("accept", "right")])
@pytest.mark.parametrize(
    "whole,part",
    [
        ("biceps brachii", "biceps_brachii/long_head"),
        ("humerus", "humerus.greater_tubercle"),
        ("obturator nerve", "anterior_branch_of_obturator_nerve"),
        ("m. biceps femoris", "biceps_femoris/short_head"),
    ],
)
def test_the_course_says_what_the_whole_is_worth_for_a_part(
    whole: str, part: str, specificity: str, kind: str
) -> None:
    found = judged(whole, part, specificity=specificity)
    assert found.kind == kind
    assert "whole" in found.because


def test_the_other_head_is_wrong_whatever_the_whole_is_worth() -> None:
    found = judged("short head of biceps brachii", "biceps_brachii/long_head", specificity="accept")
    assert found.kind == "wrong"


def test_an_abbreviation_counts_if_the_course_lists_it() -> None:
    assert judged("FCR", "flexor_carpi_radialis", abbreviations=("FCR",)).kind == "right"
    refused = judged("FCR", "flexor_carpi_radialis")
    assert refused.kind == "wrong"
    assert refused.because.startswith("FCR is short for flexor carpi radialis")


@pytest.mark.parametrize(
    "text",
    ["musculus gluteus maximus", "M. gluteus maximus", "the gluteus-maximus muscle"],
)
def test_latin_filler_words_case_and_hyphens_do_not_matter(text: str) -> None:
    assert judged(text, "gluteus_maximus").kind == "right"


def test_old_names_count() -> None:
    assert judged("peroneus longus", "fibularis_longus").kind == "right"
    assert judged("common peroneal nerve", "common_fibular_nerve").kind == "right"


@given(st.sampled_from(CONCEPTS), st.sampled_from(TERMS), st.sampled_from(["accept", "half", "exact"]))
def test_no_exact_term_is_ever_accepted_for_another_concept(concept: str, term: Term, spelling: str) -> None:
    """By the terms that an item carries, which are only those near it."""
    terms = terms_for(concept, spelling)
    if normalise(term.text) in {normalise(one) for accepted in terms.accepted for one in accepted.terms}:
        return
    assert verdict(terms, term.text).kind in ("wrong", "doubtful")


@given(st.sampled_from(CONCEPTS), st.text(max_size=30))
def test_any_words_get_a_verdict_with_a_sentence(concept: str, text: str) -> None:
    assert verdict(terms_for(concept), text).because.endswith(".")
