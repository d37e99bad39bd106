"""Making asks: what is the same in all families."""

from collections.abc import Iterator

from quizroom.knowledge.anatomy import site_parts
from quizroom.questions.ask import Ask
from quizroom.questions.claim import Claim, Relation
from quizroom.questions.model import Family, Format
from quizroom.questions.syllabus import (
    Syllabus,
    Unit,
    certain_claims,
    certain_values,
    claims_of,
    claims_reaching,
    muscles_not_wrong,
    units,
    values_not_wrong,
)
from quizroom.questions.words import OptionKind

CHOSEN_OR_TYPED: tuple[Format, ...] = ("one_best", "typed")


def ask_for_value(  # noqa: PLR0913 -- one argument for each thing that families decide
    syllabus: Syllabus,
    *,
    family: Family,
    relation: Relation,
    kind: OptionKind,
    unit: Unit,
    value: str,
    stem: str,
    direction: str = "",
    wording: str = "",
) -> Ask:
    """Ask for one value of a unit: "Which of these nerves supplies brachialis?"."""
    claims = certain_claims(syllabus, relation, unit, value)
    also = accepted_besides(claims_of(syllabus, relation, unit), value) if wording else ()
    return Ask(
        family=family,
        direction=direction or f"muscle_to_{kind}",
        subject=unit.id,
        relation=relation,
        kind=kind,
        key=(value,),
        barred=values_not_wrong(syllabus, relation, _barring_unit(relation, unit)),
        facts=_ids(claims),
        muscles=(unit.muscle,),
        unit=(unit.muscle, unit.part),
        formats=CHOSEN_OR_TYPED if wording else ("one_best",),
        stem=stem,
        wording=wording,
        also=also,
    )


def ask_for_muscle(  # noqa: PLR0913 -- one argument for each thing that families decide
    syllabus: Syllabus,
    *,
    family: Family,
    relation: Relation,
    direction: str,
    value: str,
    unit: Unit,
    stem: str,
    wording: str = "",
) -> Ask:
    """Ask for a muscle, or a head, by one of its values: "Which of these muscles ...?"."""
    claims = certain_claims(syllabus, relation, unit, value)
    reaching = claims_reaching(syllabus, relation, value)
    also = tuple(dict.fromkeys(claim.muscle for claim in reaching if claim.muscle != unit.muscle))
    return Ask(
        family=family,
        direction=direction,
        subject=value,
        relation=relation,
        kind="head" if unit.part else "muscle",
        key=(unit.id,),
        barred=heads_not_wrong(syllabus, reaching)
        if unit.part
        else muscles_not_wrong(syllabus, relation, value),
        facts=_ids(claims),
        muscles=(unit.muscle,),
        value=value,
        formats=CHOSEN_OR_TYPED if wording else ("one_best",),
        stem=stem,
        wording=wording,
        also=also if wording else (),
    )


def muscles_and_heads(syllabus: Syllabus, relation: Relation) -> Iterator[tuple[Unit, str]]:
    """Every muscle on the list, and every head that differs, with each value that may be asked of it."""
    for muscle in syllabus.muscles:
        for value in certain_values(syllabus, relation, Unit(muscle)):
            yield Unit(muscle), value
    for unit in units(syllabus, relation):
        claims = claims_of(syllabus, relation, unit)
        own = dict.fromkeys(claim.value for claim in claims if claim.certain and claim.part == unit.part)
        yield from ((unit, value) for value in own if unit.part)


def accepted_besides(claims: tuple[Claim, ...], value: str) -> tuple[str, ...]:
    """Other values that a typed answer may give."""
    return tuple(dict.fromkeys(claim.value for claim in claims if claim.accepted and claim.value != value))


def has_one_value(syllabus: Syllabus, relation: Relation, unit: Unit) -> bool:
    """Whether one usual value can be typed for a unit, and any other recorded reading is accepted too.

    A part has readings of its own only to tell it from the others: there no second one is taken.
    """
    claims = claims_of(syllabus, relation, unit)
    if unit.part:
        return len({claim.value for claim in claims}) == 1
    return len({claim.value for claim in claims if claim.usual}) == 1 and all(one.accepted for one in claims)


def has_one_muscle(syllabus: Syllabus, relation: Relation, value: str) -> bool:
    """Whether one muscle can be typed for a value, and any other that may count surely does.

    A muscle that is recorded for a larger place, of which the value is a part, leaves a doubt.
    """
    claims = claims_reaching(syllabus, relation, value)
    sure = {claim.muscle for claim in sure_claims(syllabus, relation, value) if claim.accepted}
    return len({claim.muscle for claim in claims if claim.usual}) == 1 and all(
        claim.accepted and claim.muscle in sure for claim in claims
    )


def has_one_head(reaching: tuple[Claim, ...], unit: Unit) -> bool:
    """Whether one head alone can be typed: no other, and not its whole muscle, is recorded at all."""
    return {(claim.muscle, claim.part) for claim in reaching} == {(unit.muscle, unit.part)}


def sure_claims(syllabus: Syllabus, relation: Relation, value: str) -> Iterator[Claim]:
    """Claims by which a muscle surely counts: at the value, on a part of it, by a branch of it."""
    table = syllabus.tables[relation]
    match relation:
        case "nerve":
            yield from claims_reaching(syllabus, relation, value)
        case "origin" | "insertion" | "attachment":
            for site in (value, *sorted(site_parts(syllabus.catalogue, value))):
                yield from table.by_value.get(site, ())
        case _:
            yield from table.by_value.get(value, ())


def heads_not_wrong(syllabus: Syllabus, reaching: tuple[Claim, ...]) -> frozenset[str]:
    """The parts for which any of the claims holds; a claim of the whole muscle holds for each part."""
    return frozenset(
        f"{claim.muscle}/{part.id}"
        for claim in reaching
        for part in syllabus.catalogue.muscles[claim.muscle].parts
        if claim.part in ("", part.id)
    )


def _ids(claims: tuple[Claim, ...]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(claim.id for claim in claims))


def _barring_unit(relation: Relation, unit: Unit) -> Unit:
    """What one head does may be put down to its muscle: for actions the whole muscle bars."""
    return Unit(unit.muscle) if relation in ("action", "prime") else unit
