"""Reasons: what the thing that was chosen really is, in a sentence with its facts and sources."""

from collections.abc import Iterable, Sequence
from functools import lru_cache

from quizroom.knowledge.segments import SEGMENTS
from quizroom.knowledge.wording import listed, part_name
from quizroom.questions.claim import Claim, Relation
from quizroom.questions.grammar import (
    LONGEST_LIST,
    agreeing,
    capitalised,
    definite,
    listed_clearly,
    shortened,
)
from quizroom.questions.model import Reason
from quizroom.questions.syllabus import Syllabus, Unit, claims_of
from quizroom.questions.words import (
    ENDS,
    action_text,
    concept_text,
    end_verb,
    is_true_joint,
    movement_text,
    place_text,
    site_text,
    unit_text,
)

_DIFFER_ABOUT: dict[Relation, str] = {
    "origin": "origins",
    "insertion": "insertions",
    "action": "actions",
    "prime": "actions",
    "nerve": "nerves",
    "artery": "arteries",
    "compartment": "compartment",
    "root": "roots",
    "meaning": "names",
}
_VERBS: dict[Relation, tuple[str, str]] = {
    "nerve": ("is supplied by", "are supplied by"),
    "artery": ("receives blood from", "receive blood from"),
    "action": ("produces", "produce"),
    "prime": ("is a prime mover of", "are prime movers of"),
    "crossing": ("crosses", "cross"),
    "compartment": ("belongs to", "belong to"),
    "root": ("is supplied chiefly from", "are supplied chiefly from"),
    "meaning": ("is a name that means", "is a name that means"),
}


@lru_cache(maxsize=16384)
def reason_of_unit(syllabus: Syllabus, relation: Relation, unit: Unit, *, focus: str = "") -> Reason:
    """What is true of a muscle or part in a relation, the value in `focus` first.

    Of actions only those at the joint of the one in focus, if the unit has any there.
    """
    if relation == "attachment":
        return _both_ends(syllabus, unit, focus)
    claims = usual(claims_of(syllabus, relation, unit))
    if relation == "prime" and not claims:
        return reason_of_unit(syllabus, "action", unit, focus=focus)
    if relation in ("action", "prime"):
        joint = focus.partition(".")[0]
        claims = [one for one in claims if one.value.startswith(f"{joint}.")] or claims
    if relation == "crossing":
        claims = [one for one in claims if _is_named(syllabus, one)]
    what = _predicate(syllabus, relation, unit, _focused(claims, focus))
    if relation == "crossing" and not what:
        what = f"{agreeing(unit_text(syllabus.words, unit.muscle, unit.part), 'crosses', 'cross')} no joint"
    text = capitalised(unit_text(syllabus.words, unit.muscle, unit.part))
    return reason(f"{text} {what}." if what else f"{text}: nothing of this kind is on record.", claims)


def reason_of_joint(syllabus: Syllabus, unit: Unit, joint: str) -> Reason:
    """Why a joint is, or is not, one of those that a unit crosses."""
    crossed = usual(claims_of(syllabus, "crossing", unit))
    joints = list(dict.fromkeys(claim.value for claim in crossed if _is_named(syllabus, claim)))
    text = unit_text(syllabus.words, unit.muscle, unit.part)
    crosses = f"{text} {agreeing(text, 'crosses', 'cross')}"
    place = definite(concept_text(syllabus.words, "joint", joint))
    if joint in joints:
        return reason(f"{capitalised(crosses)} {place}: {_way(syllabus, unit)}.", crossed)
    lies = "lie" if syllabus.catalogue.joints[joint].plural else "lies"
    only = "only " if len(joints) <= LONGEST_LIST else ""
    names = [definite(concept_text(syllabus.words, "joint", one)) for one in joints]
    listing = listed(shortened(names))
    crossing = (
        f"{crosses} {only}{listing}" if names else f"{text} {agreeing(text, 'crosses', 'cross')} no joint"
    )
    return reason(f"{capitalised(place)} {lies} off its course: {crossing}.", crossed)


def _is_named(syllabus: Syllabus, claim: Claim) -> bool:
    """Whether a joint is told among those crossed: what merely moves, as the pelvic floor does, is none."""
    return is_true_joint(syllabus.catalogue.joints[claim.value])


def books_differ(syllabus: Syllabus, relation: Relation, muscle: str) -> str:
    """A pointer to the record where books differ on what was asked, else nothing."""
    about = _DIFFER_ABOUT.get(relation, "")
    contested = any(row.about == about for row in syllabus.catalogue.muscles[muscle].differ)
    return " Books differ on details; the record tells which." if contested else ""


def _both_ends(syllabus: Syllabus, unit: Unit, focus: str) -> Reason:
    """Origin and insertion in one sentence; the one end alone that has the site in focus."""
    for end in ENDS:
        if any(claim.usual and claim.value == focus for claim in claims_of(syllabus, end, unit)):
            return reason_of_unit(syllabus, end, unit, focus=focus)
    text = unit_text(syllabus.words, unit.muscle, unit.part)
    claims = [claim for end in ENDS for claim in usual(claims_of(syllabus, end, unit))]
    way = _way(syllabus, unit, focus).removeprefix(f"{agreeing(text, 'it', 'they')} ")
    return reason(f"{capitalised(text)} {way}.", claims)


def _way(syllabus: Syllabus, unit: Unit, focus: str = "") -> str:
    """From where to where: "it originates from A; it inserts on B"."""
    it = agreeing(unit_text(syllabus.words, unit.muscle, unit.part), "it", "they")
    claims = {end: _focused(usual(claims_of(syllabus, end, unit)), focus) for end in ENDS}
    clauses = [_predicate(syllabus, end, unit, claims[end]) for end in ENDS]
    return "; ".join(f"{it} {clause}" for clause in clauses if clause)


def _predicate(syllabus: Syllabus, relation: Relation, unit: Unit, claims: Sequence[Claim]) -> str:
    """What a unit does in a relation: "originates from ..."; empty if nothing is on record."""
    text = unit_text(syllabus.words, unit.muscle, unit.part)
    texts = _action_texts if relation in ("action", "prime") else _value_texts
    values = listed_clearly(shortened(texts(syllabus, relation, unit, claims)))
    if not values:
        return ""
    if relation in ("origin", "insertion"):
        return f"{end_verb(syllabus.words, relation, [text])} {values}"
    return f"{agreeing(text, *_VERBS[relation])} {values}"


def _focused(claims: Sequence[Claim], focus: str) -> list[Claim]:
    """The claims of one value first; segments from the neck down."""
    if focus in SEGMENTS:
        return sorted(claims, key=lambda claim: SEGMENTS.index(claim.value))
    return sorted(claims, key=lambda claim: claim.value != focus)


def _value_texts(syllabus: Syllabus, relation: Relation, unit: Unit, claims: Sequence[Claim]) -> list[str]:
    """The values of a unit as text, those of the same parts together where the parts differ."""
    by_parts: dict[str, list[str]] = {}
    for value, held in _parts_by_value(claims).items():
        by_parts.setdefault(_in_parts(syllabus, unit, held), []).append(value_text(syllabus, relation, value))
    if list(by_parts) == [""]:
        return by_parts[""]
    return [listed_clearly(shortened(texts)) + parts for parts, texts in by_parts.items()]


def _action_texts(syllabus: Syllabus, _: Relation, unit: Unit, claims: Sequence[Claim]) -> list[str]:
    """The actions of a unit joint by joint: "flexion and abduction (acromial part) at the shoulder joint"."""
    by_joint: dict[str, list[str]] = {}
    for value, held in _parts_by_value(claims).items():
        joint, movement = value.split(".")
        name = concept_text(syllabus.words, "movement", movement)
        by_joint.setdefault(joint, []).append(name + _in_parts(syllabus, unit, held))
    return [
        _at_place(shortened(names), place_text(syllabus.words, joint)) for joint, names in by_joint.items()
    ]


def _at_place(names: list[str], place: str) -> str:
    """Movements with their place, which stands after the first if that is the only one."""
    return movement_text(names[0], place) if len(names) == 1 else f"{listed(names)} {place}"


def _parts_by_value(claims: Sequence[Claim]) -> dict[str, list[str]]:
    parts: dict[str, list[str]] = {}
    for claim in claims:
        parts.setdefault(claim.value, []).append(claim.part)
    return parts


def _in_parts(syllabus: Syllabus, unit: Unit, held: Sequence[str]) -> str:
    """The parts in brackets, unless it is all of the unit."""
    muscle = syllabus.catalogue.muscles[unit.muscle]
    if unit.part or "" in held or len(set(held)) == len(muscle.parts):
        return ""
    return f" ({listed([part_name(muscle, part) for part in dict.fromkeys(held)])})"


def value_text(syllabus: Syllabus, relation: Relation, value: str) -> str:
    """A site, nerve, movement, ... as it stands in a sentence."""
    words = syllabus.words
    match relation:
        case "origin" | "insertion" | "attachment":
            return site_text(words, value)
        case "action" | "prime":
            return action_text(words, value)
        case "nerve" | "artery":
            return definite(concept_text(words, relation, value))
        case "crossing":
            return definite(concept_text(words, "joint", value))
        case "compartment":
            return definite(concept_text(words, "compartment", value))
        case "root":
            return value
        case "meaning":
            return f'"{concept_text(words, "meaning", value)}"'


def usual(claims: Iterable[Claim]) -> list[Claim]:
    """Those of the standard account."""
    return [claim for claim in claims if claim.usual]


def reason(text: str, claims: Iterable[Claim]) -> Reason:
    """A sentence with the facts and sources of the claims it rests on."""
    claims = tuple(claims)
    return Reason(
        text=text,
        facts=tuple(dict.fromkeys(fact for claim in claims for fact in (*claim.facts, claim.id) if fact)),
        sources=tuple(dict.fromkeys(source for claim in claims for source in claim.sources)),
    )
