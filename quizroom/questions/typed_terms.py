"""What may be typed for a concept, and what lies near it: all that a verdict needs."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from quizroom.knowledge.lexicon import Term
from quizroom.questions.grammar import capitalised
from quizroom.questions.model import Accepted, NearTerm, Reason, Spelling, Worth
from quizroom.questions.near import accepted_terms, near_terms
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.typed import form_of
from quizroom.questions.wholes import wholes_of

_WORTH: dict[str, Worth] = {"exact": "none", "half": "half", "accept": "full"}
"""What the whole counts where a part was asked for, by the course's wish."""


@dataclass(frozen=True, slots=True, kw_only=True)
class TypedTerms:
    """The terms of one typed question."""

    accepted: tuple[Accepted, ...]
    near: tuple[NearTerm, ...]
    spelling: Spelling


def typed_terms(
    syllabus: Syllabus,
    concepts: Sequence[str],
    text_of: Callable[[str], str],
    tell: Callable[[Term], Reason],
) -> TypedTerms:
    """The terms of the accepted concepts, the first of which was asked for.

    `text_of` gives the words in which a concept is shown, `tell` what another term denotes.
    """
    vocabulary = syllabus.vocabulary()
    accepted = tuple(
        Accepted(concept=one, text=text_of(one), terms=accepted_terms(vocabulary, one)) for one in concepts
    )
    terms = {one.concept: one.terms for one in accepted}
    wholes = tuple(_whole_terms(syllabus, accepted)) if len(accepted) == 1 else ()
    named = {form_of(one.term) for one in wholes}
    near = (
        _near(term, tell(term))
        for term in near_terms(vocabulary, terms, vocabulary.of_concept[concepts[0]][0].kind)
        if form_of(term.text) not in named
    )
    return TypedTerms(accepted=accepted, near=(*wholes, *near), spelling=syllabus.course.spelling)


def plain_terms(syllabus: Syllabus, concept: str, text: str = "") -> TypedTerms:
    """The same for a concept by itself, asked for in no question. Raises KeyError for an unknown one.

    What `text` is a term for is told however far it is from the concept.
    """
    vocabulary = syllabus.vocabulary()
    named = vocabulary.of_concept

    def text_of(one: str) -> str:
        return named[one][0].text

    def tell(term: Term) -> Reason:
        alike = syllabus.catalogue.lookalikes.get(term.concept)
        return Reason(text=alike.tell if alike else _is_another(term, text_of(term.concept)))

    terms = typed_terms(syllabus, (concept,), text_of, tell)
    known = {form_of(one.term) for one in terms.near}
    own = concept in vocabulary.loose.get(form_of(text), ())
    others = () if own or form_of(text) in known else vocabulary.terms.get(form_of(text), ())
    far = (_near(term, tell(term)) for term in others)
    return replace(terms, near=(*terms.near, *far))


def _near(term: Term, reason: Reason) -> NearTerm:
    return NearTerm(concept=term.concept, term=term.text, tells=reason.text, facts=reason.facts)


def _whole_terms(syllabus: Syllabus, accepted: Sequence[Accepted]) -> Iterator[NearTerm]:
    """The terms of what the one asked for is a part of, unless they also name it."""
    asked = accepted[0]
    vocabulary = syllabus.vocabulary()
    own = {form_of(term) for term in asked.terms}
    for whole in wholes_of(syllabus.catalogue, asked.concept):
        for term in accepted_terms(vocabulary, whole):
            if form_of(term) not in own:
                tells = f"{capitalised(term)} is the whole of which {asked.text} is a part."
                worth = _WORTH[syllabus.course.specificity]
                yield NearTerm(concept=whole, term=term, tells=tells, worth=worth)


def _is_another(term: Term, preferred: str) -> str:
    """What another term is, in a sentence; of an abbreviation of the thing itself that it is not taken."""
    article = "an" if term.kind == "artery" else "a"
    if term.standing == "abbreviation":
        return f"{term.text} is short for {preferred}; only abbreviations of the course list are taken."
    if form_of(term.text) == form_of(preferred):
        return f"{capitalised(term.text)} is {article} {term.kind} of its own."
    return f"{capitalised(term.text)} is a word for {preferred}."
