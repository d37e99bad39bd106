"""The slice against moment arms computed with the MyoSim full-body model (Apache-2.0, see CREDITS.md).

A claimed core action fails if the model is strongly against it: the opposite sign in all sampled
postures and no fibre bundle of the part in favour. What the model does more than books say fails nothing.
"""

import pytest

from quizroom.knowledge.anatomy import joints_recorded
from quizroom.knowledge.facts import Fact, slug
from quizroom.knowledge.model import Action
from tests.reference.comparison import Case, Row, allowed, comparable_rows, content, rows_of

TABLE = "myosim_moment_arms"
FINGERS = ("index finger", "middle finger", "ring finger", "little finger")
JOINTS = {
    "shoulder": "glenohumeral",
    "elbow": "elbow",
    "forearm": "radioulnar_joints",
    "wrist": "wrist",
    "thumb CMC": "thumb_carpometacarpal",
    "thumb MCP": "thumb_metacarpophalangeal",
    "thumb IP": "thumb_interphalangeal",
    **{f"{finger} MCP": "metacarpophalangeal_joints" for finger in FINGERS},
    **{f"{finger} PIP": "proximal_interphalangeal_joints" for finger in FINGERS},
    **{f"{finger} DIP": "distal_interphalangeal_joints" for finger in FINGERS},
}
MOVEMENTS = {
    "abduction (radial deviation)": "radial_deviation",
    "adduction (ulnar deviation)": "ulnar_deviation",
    "ulnar abduction": "abduction",
}


def core_actions() -> list[Fact]:
    """The core actions of the muscles that the model has."""
    modelled = {slug(row.muscle) for row in rows_of(TABLE)}
    facts = content().index.facts.values()
    return [
        fact for fact in facts if (fact.kind, fact.status) == ("action", "core") and fact.muscle in modelled
    ]


def strong_signs(fact: Fact) -> set[tuple[str, str]]:
    """Joint and movement of every strong sign of the fibre bundles that make up the fact's part."""
    rows = [row for row in comparable_rows(TABLE, "action") if slug(row.muscle) == fact.muscle]
    word = fact.part.split("_")[0]
    own = [row for row in rows if word and word in row.part] or rows
    return {meaning(row) for row in own if row.note.startswith("strong")}


def meaning(row: Row) -> tuple[str, str]:
    place, _, movement = row.value.partition(": ")
    return JOINTS[place], MOVEMENTS.get(movement, slug(movement))


def verdict(fact: Fact) -> str:
    assert isinstance(fact.row, Action)
    signs = strong_signs(fact)
    opposite = content().movements[fact.row.movement].antagonist
    if (fact.row.joint, fact.row.movement) in signs:
        return "confirmed"
    return "opposed" if (fact.row.joint, opposite) in signs else "not told"


def test_no_core_action_is_strongly_opposed() -> None:
    opposed = {
        Case(TABLE, fact.muscle, "action", fact.value)
        for fact in core_actions()
        if verdict(fact) == "opposed"
    }
    assert opposed == {case for case in allowed(TABLE) if case.fact_type == "action"}


def test_many_core_actions_are_confirmed() -> None:
    verdicts = [verdict(fact) for fact in core_actions()]
    assert verdicts.count("confirmed") >= 60


def test_joints_crossed_in_the_model_are_crossed() -> None:
    strange = {
        Case(TABLE, slug(row.muscle), "joint_crossed", row.value)
        for row in comparable_rows(TABLE, "joint_crossed")
        if row.value in JOINTS and JOINTS[row.value] not in joints_recorded(content(), slug(row.muscle))
    }
    assert strange == {case for case in allowed(TABLE) if case.fact_type == "joint_crossed"}


def test_the_joints_of_the_model_are_known() -> None:
    crossed = [row.value for row in comparable_rows(TABLE, "joint_crossed")]
    assert sum(value in JOINTS for value in crossed) > 80
    assert set(JOINTS.values()) <= set(content().joints)


@pytest.mark.parametrize(
    "value, joint, movement",
    [
        ("wrist: abduction (radial deviation)", "wrist", "radial_deviation"),
        ("shoulder: medial rotation", "glenohumeral", "medial_rotation"),
        ("ring finger DIP: flexion", "distal_interphalangeal_joints", "flexion"),
    ],
)
def test_the_model_s_words_are_read(value: str, joint: str, movement: str) -> None:
    assert meaning(Row("", "", "", "", "action", value, "")) == (joint, movement)
