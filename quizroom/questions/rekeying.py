"""An item keyed anew by the host: another key, with the reasons as dealt beside it.

Whatever marks, explains or counts an item reads its key, its accepted terms and its reasons; so an item with
others needs no special case anywhere.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import zip_longest

from quizroom.knowledge.terms import normalise
from quizroom.questions.model import Accepted, Item, NearTerm, Option, Reason, Stem

KEYED_BY_HOST = "Your host keyed this answer."
NOT_KEYED_BY_HOST = "Your host does not count this answer any more."
KEYED_ROW_BY_HOST = "Your host keyed {} here."
AS_DEALT = "As dealt: {}"
MOST_TERMS = 20
LONGEST_REASON = 200
"""Characters."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rekeying:
    """What a host keys instead. `key` holds letters as an item's key does; `terms` what may be typed."""

    key: tuple[str, ...] = ()
    terms: tuple[str, ...] = ()
    reason: str = ""


def fits(item: Item, wish: Rekeying) -> bool:
    """Whether an item of this format can be keyed so.

    At least as many options or terms as were asked for, since nobody could have the full mark otherwise;
    of an ordering all letters, of a matching one for each row.
    """
    letters = tuple(option.letter for option in item.options)
    if not letters:
        concepts = {_accepted(item, term).concept for term in wish.terms if normalise(term)}
        return not wish.key and item.pick <= len(concepts) and len(wish.terms) <= MOST_TERMS
    if wish.terms or not set(wish.key) <= set(letters):
        return False
    match item.format:
        case "ordering":
            return sorted(wish.key) == sorted(letters)
        case "matching":
            return len(wish.key) == len(item.stems)
        case _:
            return len(wish.key) == len(set(wish.key)) >= item.pick


def rekeyed(item: Item, wish: Rekeying) -> Item:
    """The item as dealt with another key, and with reasons that say who keyed it so."""
    if not item.options:
        return _with_terms(item, wish)
    why = _why(item, wish)
    match item.format:
        case "ordering":
            return replace(item, key=wish.key, why=why, options=_moved(item, wish.key))
        case "matching":
            return replace(item, key=wish.key, why=why, stems=_paired_anew(item, wish.key))
        case _:
            options = tuple(_keyed_anew(item, option, wish.key) for option in item.options)
            return replace(item, key=tuple(sorted(wish.key)), why=why, options=options)


def keeps_key(dealt: Item, now: Item) -> bool:
    """Whether everything that was right as dealt is right still, whatever else the host keyed besides."""
    if dealt.format in ("ordering", "matching"):
        return dealt.key == now.key
    concepts = {one.concept for one in now.accepted}
    return set(dealt.key) <= set(now.key) and {one.concept for one in dealt.accepted} <= concepts


def key_words(item: Item) -> str:
    """The key in one line, for a list of changes."""
    texts = {option.letter: f"{option.letter}: {option.text}" for option in item.options}
    heads = [f"{stem.text} – " for stem in item.stems]
    said = [head + texts[letter] for head, letter in zip_longest(heads, item.key, fillvalue="")]
    between = ", then " if item.format == "ordering" else "; "
    return between.join(said or [one.text for one in item.accepted])


def _why(item: Item, wish: Rekeying) -> Reason:
    said = (
        f"Your host keyed this item anew: {wish.reason}" if wish.reason else "Your host keyed this item anew."
    )
    return _beside(item.why, said if said.endswith((".", "!", "?")) else f"{said}.")


def _beside(reason: Reason, said: str) -> Reason:
    """What the host did, and what was said of it as dealt."""
    return replace(reason, text=f"{said} {AS_DEALT.format(reason.text)}" if reason.text else said)


def _keyed_anew(item: Item, option: Option, key: Sequence[str]) -> Option:
    was, is_now = option.letter in item.key, option.letter in key
    if was == is_now:
        return option
    said = KEYED_BY_HOST if is_now else NOT_KEYED_BY_HOST
    return replace(option, reason=_beside(option.reason, said))


def _moved(item: Item, key: Sequence[str]) -> tuple[Option, ...]:
    """Options of an ordering; those that stand at another place say so."""
    said = {letter: KEYED_ROW_BY_HOST.format(letter) for letter in key}
    return tuple(
        option
        if item.key.index(option.letter) == key.index(option.letter)
        else replace(option, reason=_beside(option.reason, said[option.letter]))
        for option in item.options
    )


def _paired_anew(item: Item, key: Sequence[str]) -> tuple[Stem, ...]:
    return tuple(
        stem
        if was == is_now
        else replace(stem, reason=_beside(stem.reason, KEYED_ROW_BY_HOST.format(is_now)))
        for stem, was, is_now in zip(item.stems, item.key, key, strict=True)
    )


def _with_terms(item: Item, wish: Rekeying) -> Item:
    """The item with what may be typed for it: concepts as dealt, of terms nearby, or the host's own words."""
    accepted: dict[str, Accepted] = {}
    for term in filter(normalise, wish.terms):
        one = _accepted(item, term)
        accepted.setdefault(one.concept, one)
    dropped = tuple(
        NearTerm(
            concept=one.concept, term=term, tells=f"{NOT_KEYED_BY_HOST} {AS_DEALT.format(item.why.text)}"
        )
        for one in item.accepted
        if one.concept not in accepted
        for term in one.terms
    )
    near = tuple(one for one in item.near if one.concept not in accepted)
    return replace(item, accepted=tuple(accepted.values()), near=(*dropped, *near), why=_why(item, wish))


def _accepted(item: Item, term: str) -> Accepted:
    form = normalise(term)
    for one in item.accepted:
        if form in map(normalise, (one.text, *one.terms)):
            return one
    for near in item.near:
        if form == normalise(near.term):
            terms = tuple(other.term for other in item.near if other.concept == near.concept)
            because = f"{KEYED_BY_HOST} {AS_DEALT.format(near.tells)}" if near.tells else KEYED_BY_HOST
            return Accepted(concept=near.concept, text=near.term, terms=terms, because=because)
    text = " ".join(term.split())
    return Accepted(concept=f"keyed {form}", text=text, terms=(text,), because=KEYED_BY_HOST)
