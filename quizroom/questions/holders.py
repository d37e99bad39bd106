"""Reasons about a site, a nerve, an artery or a movement: which muscles have to do with it."""

from collections.abc import Iterable, Sequence
from functools import lru_cache

from quizroom.knowledge.wording import listed, part_name
from quizroom.questions.claim import Claim, Relation
from quizroom.questions.explain import reason, usual, value_text
from quizroom.questions.grammar import (
    LONGEST_LIST,
    agreeing,
    agreeing_with_all,
    capitalised,
    listed_clearly,
    shortened,
    uncapitalised,
)
from quizroom.questions.model import Reason
from quizroom.questions.syllabus import Syllabus, claims_reaching
from quizroom.questions.words import ENDS, End, concept_text, end_verb, site_text, there_verb, with_article

_BY_SOME = "Only by some accounts: "


@lru_cache(maxsize=8192)
def reason_of_value(syllabus: Syllabus, relation: Relation, value: str) -> Reason:
    """What a site, nerve, artery or movement really has to do with muscles."""
    if relation in ("origin", "insertion", "attachment"):
        return _reason_of_site(syllabus, value)
    table = syllabus.tables[relation]
    claims: Sequence[Claim] = table.by_value.get(value, ())
    if not usual(claims) and relation == "nerve":
        claims = claims_reaching(syllabus, relation, value)
    if relation == "action":
        claims = sorted(claims, key=lambda claim: not _leads(syllabus, claim))
    standard = usual(claims)
    if relation == "prime" and not standard:
        return reason_of_value(syllabus, "action", value)
    if not claims:
        return Reason(text=_nobody(syllabus, relation, value))
    if relation == "root" and not standard:
        return reason(_minor_segment(syllabus, value, claims), claims)
    sentence = _sentence(syllabus, relation, value, holders(syllabus, standard or claims))
    return reason(sentence if standard else f"{_BY_SOME}{uncapitalised(sentence)}", standard or claims)


def reason_of_set(syllabus: Syllabus, relation: Relation, value: str, muscles: tuple[str, ...]) -> Reason:
    """Which muscles belong to a value, all of them named."""
    reaching = claims_reaching(syllabus, relation, value)
    claims = [claim for claim in reaching if claim.certain and claim.muscle in muscles]
    names = [with_article(concept_text(syllabus.words, "muscle", muscle)) for muscle in muscles]
    match relation:
        case "attachment":
            text = f"{listed(names)} attach to {site_text(syllabus.words, value)}."
        case "compartment":
            text = f"{listed(names)} belong to {value_text(syllabus, relation, value)}."
        case _:
            text = _sentence(syllabus, relation, value, holders(syllabus, claims), longest=len(muscles))
    return reason(capitalised(text), claims)


def holders(syllabus: Syllabus, claims: Iterable[Claim]) -> list[str]:
    """The muscles of claims, those on the list first: "deltoid", "the long head of triceps brachii"."""
    parts: dict[str, list[str]] = {}
    for claim in claims:
        parts.setdefault(claim.muscle, []).append(claim.part)
    muscles = sorted(parts, key=lambda muscle: muscle not in syllabus.on_list)
    return [_holder(syllabus, muscle, parts[muscle]) for muscle in muscles]


def _leads(syllabus: Syllabus, claim: Claim) -> bool:
    movers = syllabus.tables["prime"].by_value.get(claim.value, ())
    return any(mover.id == claim.id and mover.usual for mover in movers)


def _holder(syllabus: Syllabus, muscle: str, parts: list[str]) -> str:
    name = concept_text(syllabus.words, "muscle", muscle)
    known = syllabus.catalogue.muscles[muscle]
    if "" in parts or len(set(parts)) == len(known.parts):
        return with_article(name)
    few = listed([part_name(known, part) for part in dict.fromkeys(parts)])
    return f"the {few} of {with_article(name)}"


def _sentence(
    syllabus: Syllabus, relation: Relation, value: str, who: list[str], longest: int = LONGEST_LIST
) -> str:
    text = value_text(syllabus, relation, value)
    few = listed_clearly(shortened(who, longest))
    match relation:
        case "nerve" | "artery":
            return f"{capitalised(text)} {agreeing(text, 'supplies', 'supply')} {few}."
        case "prime":
            movers = agreeing_with_all(who, "The prime mover", "Prime movers")
            return f"{movers} of {text} {agreeing_with_all(who, 'is', 'are')} {few}."
        case "root":
            return f"{text} is a main segment of {few}."
        case "compartment":
            return f"{capitalised(few)} {agreeing_with_all(who, 'belongs', 'belong')} to {text}."
        case "crossing":
            return f"{capitalised(text)} is crossed by {few}."
        case "meaning":
            return f"That is the meaning of {few}."
        case _:
            return f"{capitalised(text)} is produced by {few}."


def _minor_segment(syllabus: Syllabus, segment: str, claims: Sequence[Claim]) -> str:
    """Of a segment that is the main one of no muscle: those that it supplies together with others."""
    few = listed_clearly(shortened(holders(syllabus, claims)))
    return f"{segment} is one of several segments of {few}; it is the main one of no muscle."


def _nobody(syllabus: Syllabus, relation: Relation, value: str) -> str:
    text = capitalised(value_text(syllabus, relation, value))
    match relation:
        case "nerve":
            note = syllabus.catalogue.nerves[value].note
            return f"{text} supplies no muscle on record.{' ' + note if note else ''}"
        case "artery":
            return f"{text} {agreeing(text, 'is', 'are')} not recorded as supplying a muscle directly."
        case "root":
            return f"{text} is the main segment of no muscle on record."
        case _ if _is_led_from_the_other_side(syllabus, value):
            return f"{text} is an action of no muscle on record: the muscles of the other side do that."
        case _:
            return f"{text} is an action of no muscle on record."


def _is_led_from_the_other_side(syllabus: Syllabus, action: str) -> bool:
    """Whether no muscle does this to the one side, but muscles do the same to the other."""
    joint, _, movement = action.partition(".")
    mirrored = f"{joint}.{syllabus.catalogue.movements[movement].antagonist}"
    return "_side" in movement and bool(usual(syllabus.tables["action"].by_value.get(mirrored, ())))


def _reason_of_site(syllabus: Syllabus, site: str) -> Reason:
    recorded = {end: syllabus.tables[end].by_value.get(site, ()) for end in ENDS}
    standard = {end: usual(claims) for end, claims in recorded.items() if usual(claims)}
    if standard:
        claims = [claim for group in standard.values() for claim in group]
        return reason(_attached(syllabus, site, standard), claims)
    some = {end: list(claims) for end, claims in recorded.items() if claims}
    if some:
        claims = [claim for group in some.values() for claim in group]
        sentence = _attached(syllabus, site, some)
        return reason(f"{_BY_SOME}{uncapitalised(sentence)}", claims)
    return Reason(text=_bare(syllabus, site))


def _attached(syllabus: Syllabus, site: str, by_end: dict[End, list[Claim]]) -> str:
    clauses: list[str] = []
    for end, claims in by_end.items():
        who = holders(syllabus, claims)
        few = listed(shortened(who))
        if clauses:
            clauses.append(f"{few} {there_verb(syllabus.words, end, who)}")
        else:
            clauses.append(f"{few} {end_verb(syllabus.words, end, who)} {site_text(syllabus.words, site)}")
    return f"{capitalised('; '.join(clauses))}."


def _bare(syllabus: Syllabus, site: str) -> str:
    inner = [
        claim
        for end in ENDS
        for claim in claims_reaching(syllabus, end, site)
        if claim.usual and site in syllabus.catalogue.index.wholes.get(claim.value, frozenset())
    ]
    text = site_text(syllabus.words, site)
    if inner:
        return f"Of {text} only smaller places take muscles: {listed(shortened(holders(syllabus, inner)))}."
    return f"No muscle on record attaches to {text}."
