"""Accepted terms of typed items, and the other terms that lie near them."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.lexicon import Term, lexicon
from quizroom.knowledge.model import Course, TermKind
from quizroom.questions.plain_names import is_clear
from quizroom.questions.typed import FURTHEST, form_of, forms_near

_UNSAID: Mapping[str, str] = {"nerve": " nerve", "artery": " artery"}
"""What nobody types who was asked for a nerve or an artery."""


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Vocabulary:
    """The exact terms of a catalogue: by form, by concept, and the forms by first word and kind.

    Names that several landmarks share stand among them where no term is exact: whoever types "coronoid
    process" for the coracoid one means something else. They are accepted by `of_concept` alone.
    """

    terms: Mapping[str, tuple[Term, ...]]
    of_concept: Mapping[str, tuple[Term, ...]]
    loose: Mapping[str, frozenset[str]]
    """By form what it may mean without being exact: it is no other term for these."""
    forms: tuple[str, ...]
    by_first_word: Mapping[tuple[str, TermKind], tuple[str, ...]]
    near: Callable[[str], tuple[str, ...]]
    """The forms within spelling reach of one."""
    abbreviations: frozenset[str]


def vocabulary_of(catalogue: Catalogue, course: Course) -> Vocabulary:
    """All exact terms; an abbreviation is accepted only if the course lists it.

    Words that are told apart from a term but name nothing here (ileum) stand under their set of look-alikes.
    """
    every = _by_form(catalogue)
    told = {form: _exact_or_shared(group) for form, group in every.items()}
    terms = {form: group for form, group in told.items() if group}
    for term in _outside_words(catalogue):
        terms.setdefault(form_of(term.text), (term,))
    of_concept: dict[str, list[Term]] = {}
    by_first_word: dict[tuple[str, TermKind], dict[str, None]] = {}
    for form, group in terms.items():
        first = form.split()[0]
        for term in group:
            if first != "nerve":  # as all Latin ones begin
                by_first_word.setdefault((first, term.kind), {})[form] = None
            if term.exact or is_clear(catalogue, form, term, group):
                of_concept.setdefault(term.concept, []).append(term)
    loose = {form: frozenset(one.concept for one in group if not one.exact) for form, group in every.items()}
    return Vocabulary(
        terms=terms,
        of_concept={concept: tuple(group) for concept, group in of_concept.items()},
        loose={form: concepts for form, concepts in loose.items() if concepts},
        forms=tuple(terms),
        by_first_word={first: tuple(forms) for first, forms in by_first_word.items()},
        near=_finder(tuple(terms)),
        abbreviations=frozenset(course.abbreviations),
    )


def _by_form(catalogue: Catalogue) -> Mapping[str, tuple[Term, ...]]:
    """All terms by the form in which typed words are compared."""
    found: dict[str, list[Term]] = {}
    for form, group in lexicon(catalogue).items():
        found.setdefault(form_of(form), []).extend(group)
    return {form: tuple(group) for form, group in found.items()}


def _exact_or_shared(group: tuple[Term, ...]) -> tuple[Term, ...]:
    exact = tuple(term for term in group if term.exact)
    return exact or tuple(term for term in group if term.kind == "landmark")


def _outside_words(catalogue: Catalogue) -> Iterator[Term]:
    for alike in catalogue.lookalikes.values():
        for word in alike.also:
            yield Term(text=word, concept=alike.id, kind=alike.kind, standing="synonym")


def accepted_terms(vocabulary: Vocabulary, concept: str) -> tuple[str, ...]:
    """Every term that names the concept exactly, in the order of the content."""
    kept = (
        term
        for term in vocabulary.of_concept.get(concept, ())
        if term.standing != "abbreviation" or term.text in vocabulary.abbreviations
    )
    return tuple(dict.fromkeys(text for term in kept for text in _as_typed(term.kind, term.text)))


def near_terms(
    vocabulary: Vocabulary, accepted: Mapping[str, tuple[str, ...]], kind: TermKind
) -> tuple[Term, ...]:
    """Terms of other concepts within spelling reach of an accepted one, or of its kind with its first word.

    `accepted` holds the terms of each accepted concept. A form that also names one of these is left out.
    """
    taken = {form_of(text) for texts in accepted.values() for text in texts}
    forms = dict.fromkeys(form for own in sorted(taken) for form in _forms_near(vocabulary, own, kind))
    found = (
        term
        for form in forms
        if form not in taken
        and vocabulary.loose.get(form, frozenset()).isdisjoint(accepted)
        and not any(term.concept in accepted for term in vocabulary.terms[form])
        for term in _first_of_kind(vocabulary.terms[form], kind)
    )
    return tuple(dict.fromkeys(_with_short_forms(found, taken)))


def _finder(forms: tuple[str, ...]) -> Callable[[str], tuple[str, ...]]:
    """Finds and remembers the forms near one among those that are about as long."""
    by_length: dict[int, list[str]] = {}
    for form in forms:
        by_length.setdefault(len(form), []).append(form)

    @cache
    def about_as_long(length: int) -> tuple[str, ...]:
        lengths = range(length - FURTHEST, length + FURTHEST + 1)
        return tuple(form for one in lengths for form in by_length.get(one, ()))

    return cache(lambda form: forms_near(form, about_as_long(len(form))))


def _as_typed(kind: TermKind, text: str) -> tuple[str, ...]:
    ending = _UNSAID.get(kind, "")
    return (text, text.removesuffix(ending)) if ending and text.endswith(ending) else (text,)


def _forms_near(vocabulary: Vocabulary, form: str, kind: TermKind) -> Iterator[str]:
    yield from vocabulary.near(form)
    yield from vocabulary.by_first_word.get((form.split(maxsplit=1)[0], kind), ())


def _first_of_kind(terms: tuple[Term, ...], kind: TermKind) -> Iterator[Term]:
    yield next((term for term in terms if term.kind == kind), terms[0])


def _with_short_forms(terms: Iterable[Term], taken: set[str]) -> Iterator[Term]:
    for term in terms:
        for text in _as_typed(term.kind, term.text):
            if form_of(text) not in taken:
                yield Term(text=text, concept=term.concept, kind=term.kind, standing=term.standing)
