"""Lesion: what a nerve cut through at a level takes away or leaves, and which lesion takes something away.

All of it is derived from the nerve tree: the textbook expectation for a complete lesion. Patients vary, and
every reason says so.
"""

from collections.abc import Iterator
from dataclasses import replace

from quizroom.questions.ask import Ask
from quizroom.questions.lesion_ranks import injury_ranks, lost_ranks, movement_loss_ranks, spared_ranks
from quizroom.questions.lesion_reasons import reason_of_injury, reason_of_loss, reason_of_movement
from quizroom.questions.syllabus import Syllabus, Unit, certain_claims, claims_of, units
from quizroom.questions.words import action_text, injury_text, unit_text


def lesion_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """Muscles lost and spared, movements lost, by injury; then the injuries by muscle and by movement."""
    for injury in syllabus.injuries.nerves:
        lost = [unit for unit in units(syllabus, "nerve") if _is_lost(syllabus, injury, unit)]
        for unit in lost:
            yield _lost(syllabus, injury, unit)
            yield _taken_by(syllabus, injury, unit)
        for muscle in _spared_nearby(syllabus, injury, lost):
            yield _spared(syllabus, injury, muscle)
        for action in _failing(syllabus, injury):
            yield _movement(syllabus, injury, action)
            yield _costing(syllabus, injury, action)


def _is_lost(syllabus: Syllabus, injury: str, unit: Unit) -> bool:
    return syllabus.injuries.is_lost(injury, unit.muscle, unit.part)


def _lost(syllabus: Syllabus, injury: str, unit: Unit) -> Ask:
    injuries = syllabus.injuries
    muscles = syllabus.catalogue.muscles.values()
    whole = {one.id for one in muscles if injuries.is_whole(injury, one.id)}
    heads = [(one.id, part.id) for one in muscles for part in one.parts]
    barred = (
        {f"{muscle}/{part}" for muscle, part in heads if not injuries.is_whole(injury, muscle, part)}
        if unit.part
        else {one.id for one in muscles} - whole
    )
    return Ask(
        family="lesion",
        direction="injury_to_lost",
        subject=injury,
        relation="nerve",
        kind="head" if unit.part else "muscle",
        key=(unit.id,),
        barred=frozenset(barred),
        facts=_facts(syllabus, injury, unit),
        muscles=(unit.muscle,),
        value=syllabus.injuries.nerves[injury],
        stem=f"{_cut(syllabus, injury)} Which of these {'' if unit.part else 'muscles '}is lost?",
        ranks=None if unit.part else lost_ranks,
        tell=reason_of_loss,
    )


def _spared(syllabus: Syllabus, injury: str, muscle: str) -> Ask:
    lost = syllabus.injuries.is_lost_by_all
    return Ask(
        family="lesion",
        direction="injury_to_spared",
        subject=injury,
        relation="nerve",
        kind="muscle",
        key=(muscle,),
        barred=frozenset(one for one in syllabus.catalogue.muscles if not lost(injury, one)),
        facts=_facts(syllabus, injury, Unit(muscle)),
        muscles=(muscle,),
        value=syllabus.injuries.nerves[injury],
        stem=f"{_cut(syllabus, injury)} Which of these muscles is spared?",
        ranks=spared_ranks,
        tell=reason_of_loss,
    )


def _movement(syllabus: Syllabus, injury: str, action: str) -> Ask:
    keeps = syllabus.injuries.keeps
    leader = _leader(syllabus, injury, action)
    return Ask(
        family="lesion",
        direction="injury_to_movement",
        subject=injury,
        relation="action",
        kind="action",
        key=(action,),
        barred=frozenset(one for one in syllabus.tables["action"].by_value if not keeps(injury, one)),
        facts=(f"{injury}/fails/-/{action}",),
        muscles=(leader,),
        unit=(leader, ""),
        stem=f"{_cut(syllabus, injury)} Which of these movements is lost or severely weakened?",
        ranks=movement_loss_ranks,
        tell=reason_of_movement,
    )


def _taken_by(syllabus: Syllabus, injury: str, unit: Unit) -> Ask:
    whole = syllabus.injuries.is_whole
    text = unit_text(syllabus.words, unit.muscle, unit.part)
    return replace(
        _by_injury(syllabus, injury, unit.muscle),
        direction="muscle_to_injury",
        subject=unit.id,
        barred=frozenset(one for one in syllabus.injuries.nerves if not whole(one, unit.muscle, unit.part)),
        facts=_facts(syllabus, injury, unit),
        stem=f"Which of these complete lesions paralyzes {text}?",
    )


def _costing(syllabus: Syllabus, injury: str, action: str) -> Ask:
    keeps = syllabus.injuries.keeps
    what = action_text(syllabus.words, action)
    return replace(
        _by_injury(syllabus, injury, _leader(syllabus, injury, action)),
        direction="movement_to_injury",
        subject=action,
        barred=frozenset(one for one in syllabus.injuries.nerves if not keeps(one, action)),
        facts=(f"{injury}/fails/-/{action}",),
        stem=f"Which of these complete lesions takes away or severely weakens {what}?",
    )


def _by_injury(syllabus: Syllabus, injury: str, muscle: str) -> Ask:
    return Ask(
        family="lesion",
        direction="",
        subject="",
        relation="nerve",
        kind="injury",
        key=(injury,),
        barred=frozenset(),
        facts=(),
        muscles=(muscle,),
        value=syllabus.injuries.nerves[injury],
        stem="",
        ranks=injury_ranks,
        tell=reason_of_injury,
    )


def _cut(syllabus: Syllabus, injury: str) -> str:
    """What has happened: "The axillary nerve is cut at the surgical neck of the humerus."."""
    level = syllabus.catalogue.levels.get(injury)
    where = f" {level.name}" if level else ""
    what = syllabus.words.text_of(level.nerve) if level else injury_text(syllabus.words, injury)
    return f"The {what} is cut{where}."


def _spared_nearby(syllabus: Syllabus, injury: str, lost: list[Unit]) -> Iterator[str]:
    """Muscles surely spared that might be taken for lost: mates and look-alikes of those that are.

    None from another limb, which nobody would think of.
    """
    kinship, muscles = syllabus.kinship, syllabus.catalogue.muscles
    regions = {muscles[unit.muscle].region for unit in lost}
    here = {one for region in regions for one in kinship.around(region)}
    near = {mate for unit in lost for mate in kinship.by_compartment[muscles[unit.muscle].compartment]}
    near |= {alike for unit in lost for alike in kinship.lookalikes.get(unit.muscle, ())}
    near |= {
        claim.muscle
        for claim in syllabus.tables["nerve"].by_value.get(syllabus.injuries.nerves[injury], ())
        if claim.usual
    }
    for muscle in syllabus.muscles:
        if muscle in near & here and syllabus.injuries.is_whole(injury, muscle):
            yield muscle


def _failing(syllabus: Syllabus, injury: str) -> Iterator[str]:
    """Movements surely lost or severely weakened that a muscle on the list is known for."""
    for action, claims in syllabus.tables["action"].by_value.items():
        known = any(claim.certain and claim.muscle in syllabus.on_list for claim in claims)
        if known and syllabus.injuries.fails(injury, action) and _leader(syllabus, injury, action):
            yield action


def _leader(syllabus: Syllabus, injury: str, action: str) -> str:
    """The first muscle on the list that does a movement and is lost."""
    claims = syllabus.tables["action"].by_value[action]
    acting = {claim.muscle for claim in claims if claim.usual}
    lost = syllabus.injuries.is_lost
    return next((one for one in syllabus.muscles if one in acting and lost(injury, one)), "")


def _facts(syllabus: Syllabus, injury: str, unit: Unit) -> tuple[str, ...]:
    """What is derived, and the nerve facts from which it is."""
    values = {claim.value for claim in claims_of(syllabus, "nerve", unit) if claim.certain}
    by_nerve = (
        claim.id for value in sorted(values) for claim in certain_claims(syllabus, "nerve", unit, value)
    )
    return (f"{injury}/lesion/-/{unit.id.replace('/', '.')}", *dict.fromkeys(by_nerve))
