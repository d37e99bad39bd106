"""Typed items carry all that their marking needs: what is accepted, and what lies near it."""

from functools import cache
from random import Random

from rapidfuzz.distance import OSA
from rapidfuzz.process import extract

from quizroom.knowledge.lexicon import Term, terms_of
from quizroom.knowledge.terms import normalise
from quizroom.questions.model import Item
from quizroom.questions.typed import verdict
from tests.questions.lists import COURSES, all_items, catalogue, items_of_course, syllabus


@cache
def typed_items() -> tuple[Item, ...]:
    return tuple(item for item in all_items() if item.format in ("typed", "free_list"))


@cache
def by_form() -> tuple[tuple[str, Term], ...]:
    return tuple((normalise(term.text), term) for term in exact_terms())


@cache
def exact_terms() -> tuple[Term, ...]:
    return tuple(term for term in terms_of(catalogue()) if term.exact)


def test_there_are_typed_items_in_several_families() -> None:
    assert {item.family for item in typed_items()} >= {"origin", "insertion", "nerve", "set"}


def test_every_accepted_term_is_right() -> None:
    for item in typed_items():
        for accepted in item.accepted:
            for term in accepted.terms:
                found = verdict(item, term)
                assert (found.kind, found.concept) == ("right", accepted.concept), (item.stem, term)


def test_no_exact_term_of_the_lexicon_is_accepted_for_another_concept() -> None:
    """Terms of the whole lexicon, though the item holds only its neighbourhood: all that are not far
    in spelling, and some by chance.
    """
    random = Random(1)  # noqa: S311 - which terms are tried need not be secret
    for item in {item.accepted: item for item in typed_items()}.values():
        accepted = {one.concept for one in item.accepted}
        forms = {normalise(term) for one in item.accepted for term in one.terms}
        taken = {near.term for near in item.near if near.worth != "none"}
        others = [
            form
            for form, term in by_form()
            if term.concept not in accepted and form not in forms and term.text not in taken
        ]
        hits = (extract(form, others, scorer=OSA.distance, score_cutoff=4, limit=None) for form in forms)
        close = [other for found in hits for other, _, _ in found]
        for other in close + random.sample(others, 20):
            assert verdict(item, other).kind in ("wrong", "doubtful"), (item.stem, other)


def test_no_question_holds_its_own_answer() -> None:
    for item in typed_items():
        asked = f" {normalise(item.stem)} "
        terms = [normalise(term) for accepted in item.accepted for term in accepted.terms]
        assert not [term for term in terms if f" {term} " in asked], item.stem
    assert not any("subclavius" in item.stem and item.family == "nerve" for item in typed_items())


def test_a_part_is_typed_only_where_no_other_reading_of_it_is_recorded() -> None:
    of_parts = [item for item in typed_items() if "/" in item.subject]
    assert of_parts
    assert all(len(item.accepted) == 1 for item in of_parts)


def test_near_terms_tell_what_they_are() -> None:
    for item in typed_items():
        for near in item.near:
            assert near.tells[0].isupper(), near
            assert near.tells.endswith("."), near


def test_a_near_term_of_the_same_first_word_is_known_to_be_wrong() -> None:
    item = next(one for one in typed_items() if [a.concept for a in one.accepted] == ["pectoralis_minor"])
    found = verdict(item, "pectoralis major")
    assert (found.kind, found.concept) == ("wrong", "pectoralis_major")


def test_nobody_need_type_the_word_nerve() -> None:
    item = next(one for one in typed_items() if one.stem == "Name the nerve that supplies pectoralis minor.")
    assert verdict(item, "medial pectoral").kind == "right"
    assert verdict(item, "Lateral pectoral nerve").kind == "right"  # a variant that the course accepts
    assert verdict(item, "ulnar").kind == "wrong"


def test_abbreviations_count_only_where_the_course_lists_them() -> None:
    abbreviations = {term.text for term in exact_terms() if term.standing == "abbreviation"}
    assert abbreviations
    for course in COURSES:
        terms = {term for item in items_of_course(course) for one in item.accepted for term in one.terms}
        assert terms & abbreviations <= set(syllabus(course).course.abbreviations)
