"""A host's own item as it is dealt: an item like any other, with the records of its muscles."""

from collections.abc import Iterable, Iterator
from hashlib import blake2s
from random import Random

from quizroom.knowledge.lexicon import Term
from quizroom.questions.grammar import capitalised
from quizroom.questions.model import LETTERS, Accepted, Item, NearTerm, Option, Reason
from quizroom.questions.near import accepted_terms, near_terms
from quizroom.questions.own import OwnItem, OwnOption
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.timing import seconds_for
from quizroom.questions.typed import form_of

DIRECTION = "own"
"""In place of a direction: a host's item asks from no concept to another."""


def dealt(own: OwnItem, own_id: str, syllabus: Syllabus, seed: int) -> Item:
    """The item that goes into the log of a review; the same for the same seed.

    Args:
        own: an item in which nothing is an error (`own_rules`).
        own_id: its id in the library, by which classes' answers to it are counted together.
        syllabus: of the review: it tells the records and the terms near what may be typed.
        seed: shuffles the options.
    """
    typed = own.format == "typed"
    options = () if typed else _options(own, Random(f"own/{seed}/{own_id}"))  # noqa: S311 -- a deal is repeatable
    key = tuple(option.letter for option in options if option.source == "key")
    pick = max(1, len(key))
    texts = [option.text for option in options]
    return Item(
        id=_digest(f"{seed}/{own_id}/{own}"),
        family=own.family,
        direction=DIRECTION,
        format=own.format,
        subject=f"own:{own_id}",
        stem=own.stem,
        options=options,
        key=key,
        pick=pick,
        accepted=(_accepted(own),) if typed else (),
        near=tuple(_near(own, syllabus)) if typed else (),
        spelling=own.spelling,
        why=Reason(text=own.why or reasons_of_keys(own)),
        facts=(),
        muscles=_known(own.muscles, syllabus),
        records=tuple(syllabus.record(muscle) for muscle in _known(own.muscles, syllabus)),
        seconds=own.seconds or seconds_for(own.stem, texts, own.format, pick),
        picture=own.picture,
        by_host=True,
    )


def _options(own: OwnItem, random: Random) -> tuple[Option, ...]:
    chosen = list(own.options)
    if not own.keeps_order:
        random.shuffle(chosen)
    return tuple(_option(letter, one) for letter, one in zip(LETTERS, chosen, strict=False))


def _option(letter: str, own: OwnOption) -> Option:
    return Option(
        letter=letter,
        text=own.text,
        concept=f"own-{_digest(own.text.casefold())}",
        reason=Reason(text=own.reason),
        source="key" if own.is_key else "own",
    )


def reasons_of_keys(own: OwnItem) -> str:
    """Why the key is the key, where the host wrote nothing of the whole."""
    return " ".join(option.reason for option in own.options if option.is_key)


def _accepted(own: OwnItem) -> Accepted:
    return Accepted(concept=_concept(own), text=own.accepted[0], terms=own.accepted)


def _concept(own: OwnItem) -> str:
    return f"own-{_digest(own.accepted[0].casefold())}"


def _near(own: OwnItem, syllabus: Syllabus) -> Iterator[NearTerm]:
    """Terms of anatomy within spelling reach that name something else: these are no misspellings."""
    vocabulary = syllabus.vocabulary()
    known = [term for text in own.accepted for term in vocabulary.terms.get(form_of(text), ())]
    kind = known[0].kind if known else "muscle"
    terms = {term.concept: accepted_terms(vocabulary, term.concept) for term in known}
    for term in near_terms(vocabulary, terms | {_concept(own): own.accepted}, kind):
        yield NearTerm(concept=term.concept, term=term.text, tells=_tells(term))


def _tells(term: Term) -> str:
    article = "an" if term.kind == "artery" else "a"
    return f"{capitalised(term.text)} is {article} {term.kind} of its own."


def _known(muscles: Iterable[str], syllabus: Syllabus) -> tuple[str, ...]:
    return tuple(muscle for muscle in muscles if muscle in syllabus.catalogue.muscles)


def _digest(text: str) -> str:
    return blake2s(text.encode(), digest_size=8).hexdigest()
