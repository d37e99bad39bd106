"""From an ask to an item: options chosen and shuffled, every one with its reason."""

from collections.abc import Sequence
from dataclasses import replace
from hashlib import blake2s
from random import Random

from quizroom.knowledge.segments import SEGMENTS
from quizroom.questions.ask import Ask
from quizroom.questions.choose import wrong_for_set, wrong_options
from quizroom.questions.model import LETTERS, TYPED_FORMATS, Format, Item, Option
from quizroom.questions.ranks import Candidate
from quizroom.questions.reasons import reason_of_option, reason_of_term, why_of
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.timing import seconds_for
from quizroom.questions.typed_terms import TypedTerms, typed_terms
from quizroom.questions.words import concept_text

FEWEST_BESIDE_SET = 3
MOST_BESIDE_SET = 4


def build_item(syllabus: Syllabus, ask: Ask, format_: Format, seed: int) -> Item | None:
    """The item for an ask in one of its formats, the same for the same seed; None if no options are fair."""
    if ask.make is not None:
        return ask.make(syllabus, ask, seed)
    random = Random(f"{seed}/{format_}/{ask.id}")  # noqa: S311 -- a deal is to be repeatable, not secret
    if format_ in TYPED_FORMATS:
        return _item(syllabus, ask, format_, (), random)
    wrong = _wrong(syllabus, ask, format_, random)
    if wrong is None:
        return None
    return _item(syllabus, ask, format_, _options(syllabus, ask, wrong, random), random)


def _wrong(syllabus: Syllabus, ask: Ask, format_: Format, random: Random) -> Sequence[Candidate] | None:
    if ask.pick is not None:
        with_errors = ask.pick(syllabus, ask, random)
        return with_errors or (ask.pick(syllabus, replace(ask, errors=()), random) if ask.errors else None)
    if format_ == "one_best":
        return wrong_options(syllabus, ask, random)
    wanted = min(random.randint(FEWEST_BESIDE_SET, MOST_BESIDE_SET), len(LETTERS) - len(ask.key))
    return wrong_for_set(syllabus, ask, random, wanted, FEWEST_BESIDE_SET)


def _options(syllabus: Syllabus, ask: Ask, wrong: Sequence[Candidate], random: Random) -> tuple[Option, ...]:
    chosen: list[Candidate] = [*((key, "key") for key in ask.key), *wrong]
    random.shuffle(chosen)
    if ask.kind == "segment":
        chosen.sort(key=lambda one: SEGMENTS.index(one[0]))
    return tuple(
        Option(
            letter=letter,
            text=concept_text(syllabus.words, ask.kind, concept),
            concept=concept,
            reason=reason_of_option(syllabus, ask, concept),
            source=source,
        )
        for letter, (concept, source) in zip(LETTERS, chosen, strict=False)
    )


def _item(syllabus: Syllabus, ask: Ask, format_: Format, options: tuple[Option, ...], random: Random) -> Item:
    typed = format_ in TYPED_FORMATS
    stem = ask.wording if typed else ask.stem
    terms = _terms(syllabus, ask) if typed else None
    return Item(
        id=blake2s(f"{random.random()}/{ask.id}".encode(), digest_size=8).hexdigest(),
        family=ask.family,
        direction=ask.direction,
        format=format_,
        subject=ask.subject,
        stem=stem,
        options=options,
        key=tuple(option.letter for option in options if option.source == "key"),
        pick=len(ask.key),
        accepted=terms.accepted if terms else (),
        near=terms.near if terms else (),
        spelling=syllabus.course.spelling,
        why=why_of(syllabus, ask),
        facts=ask.facts,
        muscles=ask.muscles,
        records=tuple(syllabus.record(muscle) for muscle in ask.muscles),
        seconds=seconds_for(stem, [option.text for option in options], format_, len(ask.key)),
    )


def _terms(syllabus: Syllabus, ask: Ask) -> TypedTerms:
    return typed_terms(
        syllabus,
        (*ask.key, *ask.also),
        lambda concept: concept_text(syllabus.words, ask.kind, concept),
        lambda term: reason_of_term(syllabus, ask, term),
    )
