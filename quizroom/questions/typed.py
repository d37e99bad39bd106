"""Whether typed words name what was asked for. Distance alone is no judge: ilium and ileum differ by one.

In this order: an accepted term is right; any *other* term is wrong however near it is; a misspelling
counts only if no other concept is nearly as near; whatever is left in doubt goes to the host.
The item carries the accepted terms and those near them, so nothing else is needed.
"""

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal, Protocol

from rapidfuzz.distance import OSA, DamerauLevenshtein
from rapidfuzz.process import extract

from quizroom.knowledge.terms import normalise
from quizroom.questions.grammar import uncapitalised
from quizroom.questions.model import Accepted, NearTerm, Spelling

VerdictKind = Literal["right", "half", "wrong", "doubtful"]

_MARGIN = 2
"""How much further the nearest other concept must be before a misspelling counts."""
_SHORT = 8
_DOUBTFUL = 3
FURTHEST = 5
"""Errors between a term and another that could change a verdict on it, at most."""
_EXACT_WORDS = frozenset(
    (
        *("longus", "brevis", "major", "minor", "anterior", "posterior", "medial", "lateral", "superior"),
        *("inferior", "upper", "lower", "greater", "lesser", "internus", "externus", "superficialis"),
        *("profundus", "deep", "superficial", "long", "short", "first", "second", "third", "fourth", "fifth"),
    )
)
"""Words that alone tell one structure from its partner: a misspelt one is never guessed at."""
_EMPTY_WORDS = frozenset(
    ("nerve", "artery", "muscle", "bone", "joint", "process", "of", "head", "part", "branch", "tubercle")
)


_RANGE = re.compile(r"\b([ctls])(\d+) (?:(?:to|through|thru) )?\1?(\d+)\b")
_NUMBERS = re.compile(r"\b(\d+) (?:to|through|thru) (\d+)\b")
_SPELT = {
    "fibre": "fiber",
    "fibres": "fiber",
    "nervus": "nerve",
    "1st": "first",
    "2nd": "second",
    "3rd": "third",
    "4th": "fourth",
    "5th": "fifth",
}


@lru_cache(maxsize=16384)
def form_of(text: str) -> str:
    """The form in which typed words are compared, the same for "C3–C6", "C3-6" and "C3 to C6".

    British and American spelling are one, and "of" says nothing. A pure function remembered: a whole class
    types against the same few hundred terms.
    """
    words = (_SPELT.get(word, word) for word in normalise(text).split())
    plain = " ".join(word for word in words if word != "of") or normalise(text)
    plain = re.sub(r"^nn? | nn?$", lambda found: found[0].replace("nn", "n").replace("n", "nerve"), plain)
    return _NUMBERS.sub(r"\1 \2", _RANGE.sub(r"\1\2 \1\3", plain))


@dataclass(frozen=True, slots=True, kw_only=True)
class Verdict:
    """What typed words are worth, for which concept ("" for none known), and why in a sentence.

    A doubtful one counts nothing until the host rules; its concept is what it may have meant.
    """

    kind: VerdictKind
    concept: str
    because: str


@dataclass(frozen=True, slots=True)
class _Match:
    """An accepted term and how far the typed words are from it, None if a word is out of place."""

    accepted: Accepted
    distance: int | None
    term: str


class Asked(Protocol):
    """What typed words are judged against: an item, or the terms of a concept alone."""

    @property
    def accepted(self) -> tuple[Accepted, ...]:
        """The concepts that count, with their terms."""

    @property
    def near(self) -> tuple[NearTerm, ...]:
        """The terms of other concepts that could be meant."""

    @property
    def spelling(self) -> Spelling:
        """What a misspelling is worth."""


def verdict(item: Asked, text: str) -> Verdict:
    """Judge one typed answer."""
    typed = form_of(text)
    if not typed:
        return Verdict(kind="wrong", concept="", because="Nothing was typed.")
    for accepted in item.accepted:
        if typed.replace(" ", "") in (form_of(term).replace(" ", "") for term in accepted.terms):
            return Verdict(kind="right", concept=accepted.concept, because=_is_right(accepted))
    for near in item.near:
        if typed == form_of(near.term):
            return _verdict_on_other(item, near)
    return _verdict_on_spelling(item, typed)


def spelling_distance(typed: str, term: str) -> int | None:
    """Errors between two normalised terms, word by word; None if a telling word or the build differs.

    Each word is compared within its own slot: flexor | carpi | radialis.
    """
    ours, theirs = typed.split(), term.split()
    if len(ours) != len(theirs):
        return 1 if "".join(ours) == "".join(theirs) else None
    if any(one != other and _must_be_exact(other) for one, other in zip(ours, theirs, strict=True)):
        return None
    return sum(letters_apart(one, other) for one, other in zip(ours, theirs, strict=True))


def tolerance(term: str) -> int:
    """Errors allowed in a normalised term: one in a short one, two in a longer."""
    return 1 if len(term) < _SHORT else 2


def letters_apart(one: str, other: str) -> int:
    """Damerau-Levenshtein distance: letters put in, left out, changed, or swapped with a neighbour."""
    return DamerauLevenshtein.distance(one, other)


def forms_near(form: str, forms: Sequence[str]) -> tuple[str, ...]:
    """Those of the normalised `forms` that could change a verdict on `form`, nearest first, then in order."""
    distance = min(2 * tolerance(form) + _MARGIN - 1, FURTHEST)
    # The quick distance forbids changes within swapped letters, and so is at most half as much again.
    near = extract(form, forms, scorer=OSA.distance, score_cutoff=distance * 3 // 2, limit=None)
    found = ((letters_apart(form, one), place, one) for one, _, place in near)
    return tuple(one for apart, _, one in sorted(found) if apart <= distance)


def _verdict_on_other(item: Asked, near: NearTerm) -> Verdict:
    """Another term is wrong, unless it is the whole and the course takes that for the part."""
    asked = item.accepted[0].concept
    match near.worth:
        case "none":
            return Verdict(kind="wrong", concept=near.concept, because=near.tells)
        case "half":
            return Verdict(kind="half", concept=asked, because=f"Half a mark: {uncapitalised(near.tells)}")
        case "full":
            return Verdict(kind="right", concept=asked, because=f"{near.tells} This list takes it.")


def _verdict_on_spelling(item: Asked, typed: str) -> Verdict:
    best = min(
        _matches(item.accepted, typed), key=lambda match: (match.distance is None, match.distance or 0)
    )
    if best.distance is None or best.distance > tolerance(best.term):
        return _doubtful_or_wrong(item, typed)
    other = _nearest_other(item.near, typed)
    too_close = other and letters_apart(typed, form_of(other.term)) < best.distance + _MARGIN
    if not other or not too_close or item.spelling == "exact":
        return _misspelt(item, best.accepted)
    because = f"It may mean {best.accepted.text}, but is nearly as close to {other.term}: the host decides."
    return Verdict(kind="doubtful", concept=best.accepted.concept, because=because)


def _misspelt(item: Asked, accepted: Accepted) -> Verdict:
    match item.spelling:
        case "accept":
            because = f"Taken as {accepted.text}; look at the spelling."
            return Verdict(kind="right", concept=accepted.concept, because=because)
        case "half":
            because = f"Half a mark: {accepted.text} is meant, but misspelt."
            return Verdict(kind="half", concept=accepted.concept, because=because)
        case "exact":
            because = f"Spelling counts here: {accepted.text} was asked for."
            return Verdict(kind="wrong", concept=accepted.concept, because=because)


def _doubtful_or_wrong(item: Asked, typed: str) -> Verdict:
    for accepted in item.accepted:
        for term in map(form_of, accepted.terms):
            if _shares_words(typed, term):
                because = f"It has words of {accepted.text}, but is not quite that name: the host decides."
                return Verdict(kind="doubtful", concept=accepted.concept, because=because)
            if item.spelling != "exact" and letters_apart(typed, term) <= min(_DOUBTFUL, len(term) // 3):
                because = f"It may be a misspelling of {accepted.text}: the host decides."
                return Verdict(kind="doubtful", concept=accepted.concept, because=because)
    return Verdict(kind="wrong", concept="", because="This is none of the names that were asked for.")


def _matches(accepted: Iterable[Accepted], typed: str) -> list[_Match]:
    return [
        _Match(one, spelling_distance(typed, term), term)
        for one in accepted
        for term in map(form_of, one.terms)
    ]


def _nearest_other(near: Iterable[NearTerm], typed: str) -> NearTerm | None:
    return min(near, key=lambda one: letters_apart(typed, form_of(one.term)), default=None)


def _shares_words(typed: str, term: str) -> bool:
    """Whether one holds the other's words and at most as many more: "biceps" for biceps brachii.

    Empty words aside. One word of three ("flexor") is no name.
    """
    few, many = sorted((set(text.split()) - _EMPTY_WORDS for text in (typed, term)), key=len)
    return bool(few) and few <= many and 2 * len(few) >= len(many)


def _must_be_exact(word: str) -> bool:
    return word in _EXACT_WORDS or any(letter.isdigit() for letter in word)


def _is_right(accepted: Accepted) -> str:
    return accepted.because or f"{accepted.text[:1].upper()}{accepted.text[1:]} is right."
