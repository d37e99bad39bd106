"""Asks about the two ends of a muscle, which origin and insertion share."""

from collections.abc import Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.asking import (
    ask_for_muscle,
    ask_for_value,
    has_one_head,
    has_one_muscle,
    has_one_value,
)
from quizroom.questions.claim import Claim
from quizroom.questions.syllabus import (
    Syllabus,
    Unit,
    certain_values,
    claims_of,
    claims_reaching,
    units,
)
from quizroom.questions.words import End, end_verb, end_word, site_text, unit_text

_TYPED_KINDS = frozenset(
    (
        "process",
        "tubercle",
        "tuberosity",
        "epicondyle",
        "fossa",
        "spine",
        "carpal bone",
        "angle",
        "ridge",
        "crest",
    )
)
"""Landmarks with a name of their own, fit to be typed."""
_SHARED_KINDS = frozenset(("septum", "capsule", "skin", "fascia", "sheath"))
"""Soft tissue from which many muscles take some fibers: asked only if one muscle alone is recorded."""


def asks_of_end(syllabus: Syllabus, end: End) -> Iterator[Ask]:
    """From the muscle to the site, and from the site to the muscle."""
    for unit in units(syllabus, end):
        yield from _from_muscle(syllabus, end, unit)
    for muscle in syllabus.muscles:
        yield from _from_site(syllabus, end, Unit(muscle))
    for unit in units(syllabus, end):
        if unit.part:
            yield from _from_site(syllabus, end, unit)


def _from_muscle(syllabus: Syllabus, end: End, unit: Unit) -> Iterator[Ask]:
    claims = claims_of(syllabus, end, unit)
    text = unit_text(syllabus.words, unit.muscle, unit.part)
    word = end_word(syllabus.words, end)
    article = "the" if len({claim.value for claim in claims}) == 1 else _a(word)
    for site in certain_values(syllabus, end, unit):
        landmark = syllabus.catalogue.landmarks[site]
        typed = landmark.kind in _TYPED_KINDS and has_one_value(syllabus, end, unit)
        yield ask_for_value(
            syllabus,
            family=end,
            relation=end,
            kind="landmark",
            direction="muscle_to_site",
            unit=unit,
            value=site,
            stem=f"Which of these is {article} {word} of {text}?",
            wording=f"Name the {word} of {text}." if typed else "",
        )


def _from_site(syllabus: Syllabus, end: End, unit: Unit) -> Iterator[Ask]:
    for site in certain_values(syllabus, end, unit):
        reaching = claims_reaching(syllabus, end, site)
        if unit.part and not any(claim.part == unit.part for claim in claims_of(syllabus, end, unit)):
            continue
        if _is_shared(syllabus, reaching, site):
            continue
        place = site_text(syllabus.words, site)
        verb = end_verb(syllabus.words, end, ["it"])
        typed = has_one_head(reaching, unit) if unit.part else has_one_muscle(syllabus, end, site)
        thing = "head or part" if unit.part else "muscle"
        yield ask_for_muscle(
            syllabus,
            family=end,
            relation=end,
            direction="site_to_head" if unit.part else "site_to_muscle",
            value=site,
            unit=unit,
            stem=f"Which of these {'' if unit.part else 'muscles '}{verb} {place}?",
            wording=f"Name the {thing} on your list that {verb} {place}." if typed else "",
        )


def _is_shared(syllabus: Syllabus, reaching: tuple[Claim, ...], site: str) -> bool:
    kind = syllabus.catalogue.landmarks[site].kind
    return kind in _SHARED_KINDS and len({claim.muscle for claim in reaching}) > 1


def _a(word: str) -> str:
    return "an" if word[0] in "aeiou" else "a"
