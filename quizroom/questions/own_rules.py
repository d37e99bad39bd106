"""The trade's rules of item writing over a host's own item, each told at the field it concerns.

Rules and sources as in `rules.py`; lengths beyond these are what five lines of the wall can hold (common
practice, no source).
"""

from collections.abc import Iterator
from functools import lru_cache

from quizroom.questions.model import FAMILIES, Item
from quizroom.questions.own import OwnItem
from quizroom.questions.own_dealt import dealt
from quizroom.questions.own_findings import Finding, error
from quizroom.questions.own_option_rules import option_errors, typed_errors
from quizroom.questions.own_picture_rules import picture_errors, picture_tells_the_key
from quizroom.questions.rules import breaches
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.typed import form_of

LONGEST_STEM = 60
"""Words; the trade's limit for a vignette."""
LONGEST_STEM_LETTERS = 500
SHORTEST_ROUND, LONGEST_ROUND = 5, 3600
"""Seconds."""

_FIELD = {
    "options_claim_no_others": "options",
    "options_are_enough": "options",
    "key_is_not_the_longest": "options",
}
"""Where a rule of `rules.py` is told, if not at the stem."""
_ADVICE = {
    "stem_is_one_question": "Ask one question that ends in a question mark; or, if it is typed: Name ...",
    "stem_is_short": "25 words are enough for what is recalled; a case may be longer.",
    "stem_is_positive": "Readers overlook that word: ask for what is true.",
    "articles_are_neutral": "It tells how the key begins: write a(n), or ask otherwise.",
    "options_claim_no_others": "Such options are guessed more often than known: name the thing itself.",
    "options_are_enough": "Two to four are best beside one key, three or four beside a set.",
    "key_is_not_the_longest": "Test-wise players choose the longest: shorten it, or lengthen another.",
    "key_does_not_echo_the_stem_alone": "Say the stem in other words, or let a wrong option echo it too.",
}


@lru_cache(maxsize=4096)
def findings(own: OwnItem, syllabus: Syllabus) -> tuple[Finding, ...]:
    """All that is wrong with an item; the finer rules are asked once there are no errors.

    Remembered, since a whole library is judged whenever it is listed.
    """
    errors = tuple(_errors(own, syllabus))
    return errors or tuple(_warnings(own, dealt(own, "checked", syllabus, 1)))


def _errors(own: OwnItem, syllabus: Syllabus) -> Iterator[Finding]:
    yield from _stem_errors(own.stem)
    yield from typed_errors(own) if own.format == "typed" else option_errors(own)
    yield from picture_errors(own.picture)
    unknown = [muscle for muscle in own.muscles if muscle not in syllabus.catalogue.muscles]
    if unknown:
        text = f"No muscle has the id {unknown[0]}. Choose one from the list, or take it out."
        yield error("muscles", "muscles_are_known", text)
    if own.family not in (*FAMILIES, "own"):
        yield error("family", "family_is_known", "There is no such family. Choose another, or none.")
    if own.seconds is not None and not SHORTEST_ROUND <= own.seconds <= LONGEST_ROUND:
        text = (
            f"A round lasts {SHORTEST_ROUND} to {LONGEST_ROUND} seconds. Leave it empty to have it computed."
        )
        yield error("seconds", "time_is_possible", text)


def _stem_errors(stem: str) -> Iterator[Finding]:
    words = len(stem.split())
    if not words:
        yield error("stem", "stem_is_there", "There is no question yet. Write what players are asked.")
    if words > LONGEST_STEM or len(stem) > LONGEST_STEM_LETTERS:
        text = f"The stem has {words} words and does not fit the wall. Bring it to {LONGEST_STEM} or fewer."
        yield error("stem", "stem_fits_the_wall", text)


def _warnings(own: OwnItem, item: Item) -> Iterator[Finding]:
    for rule, wrong in breaches(item):
        text = f"{wrong[:1].upper()}{wrong[1:]}. {_ADVICE.get(rule, '')}".strip()
        yield _warning(own, _FIELD.get(rule, "stem"), rule, text)
    if own.format == "typed" and _holds(own.stem, own.accepted):
        text = "The stem holds the answer. Ask without naming it."
        yield _warning(own, "stem", "stem_keeps_the_answer", text)
    keys = own.accepted if own.format == "typed" else tuple(one.text for one in own.options if one.is_key)
    if picture_tells_the_key(own.picture, keys):
        text = "The description names the key. Describe what is seen: place, form, what lies beside it."
        yield _warning(own, "picture.alt", "picture_keeps_the_key", text)


def _warning(own: OwnItem, field: str, rule: str, text: str) -> Finding:
    return Finding(field=field, rule=rule, text=text, error=False, taken=rule in own.taken)


def _holds(text: str, terms: tuple[str, ...]) -> bool:
    words = f" {form_of(text)} "
    return any(f" {form_of(term)} " in words for term in terms if form_of(term))
