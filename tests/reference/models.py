"""The computed models: bodies at both ends of a path, joints crossed, and signs of moment arms."""

from collections.abc import Iterator
from fnmatch import filter as fitting

from quizroom.knowledge.anatomy import joints_recorded
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import FactKind
from quizroom.knowledge.model import Action
from tests.reference.rows import Row, Target, targets, words
from tests.reference.verdicts import Aspect, Judgement, Verdict, facts_about, held, joined, meant

ENDS: dict[str, tuple[Aspect, tuple[FactKind, ...]]] = {
    "model body of the proximal path end": ("origin bone", ("origin",)),
    "model body of the distal path end": ("insertion bone", ("insertion",)),
}
"""By note. In other notes the ends are only said to be first and last, or of some fascicles."""


def judge_body(catalogue: Catalogue, row: Row) -> Iterator[Judgement]:
    """Whether the model's body at an end of the path holds a recorded attachment."""
    aspect, ends = ENDS.get(row.note, ("either bone", ("origin", "insertion")))
    bodies = {
        bone
        for glob in meant(words("models")["bodies"], row.value)
        for bone in fitting(catalogue.bones, glob)
    }
    for target in targets(row):
        sites = (catalogue.landmarks[fact.value] for fact in facts_about(catalogue, target, *ends))
        bones = {bone for site in sites for bone in site.bones}
        yield Judgement(aspect, held(told=bool(bodies), recorded=bool(bodies & bones)))


def judge_joint(catalogue: Catalogue, row: Row) -> Iterator[Judgement]:
    """Whether a joint over which the model's path has a lever is crossed by the recorded attachments."""
    joints = set(meant(words("models")["joints"], row.value))
    crossed = ({*joints_recorded(catalogue, one.muscle, one.part)} for one in targets(row))
    yield Judgement(
        "joint crossed", joined(held(told=bool(joints), recorded=bool(joints & one)) for one in crossed)
    )


def judge_sign(catalogue: Catalogue, row: Row) -> Iterator[Judgement]:
    """Whether a strong sign of a moment arm is recorded as an action, or its opposite is.

    What a model does more than books say fails nothing, nor does a sign that changes with posture.
    """
    yield Judgement("action", joined(_sign(catalogue, row, target) for target in targets(row)))


def meaning(row: Row) -> tuple[list[str], str]:
    """The joints, of which any will do, and the movement of an action row; no joints if we have none."""
    place, _, movement = row.value.partition(": ")
    joints = meant(words("models")["joints"], place)
    return joints, words("models")["movements"].get(movement, movement.replace(" ", "_"))


def _sign(catalogue: Catalogue, row: Row, target: Target) -> Verdict:
    joints, movement = meaning(row)
    if not row.note.startswith("strong"):
        return "not comparable"
    rows = [fact.row for fact in facts_about(catalogue, target, "action") if isinstance(fact.row, Action)]
    acting = [one for one in rows if one.joint in joints]
    opposite = catalogue.movements[movement].antagonist
    recorded = any(one.movement == movement for one in acting)
    opposed = any(one.movement == opposite and one.status == "core" for one in acting)
    return held(told=recorded or opposed, recorded=recorded)
