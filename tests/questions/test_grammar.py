"""The little grammar of stems: what is many, what is a joint, where a movement takes place."""

import pytest

from quizroom.knowledge.model import Joint
from quizroom.questions.grammar import agreeing
from quizroom.questions.same_movement import action_overlap
from quizroom.questions.words import is_true_joint


@pytest.mark.parametrize(
    "text",
    [
        "rotatores",
        "levatores costarum",
        "external intercostals",
        "upper fibers of trapezius",
        "interspinales cervicis",
        "lumbricals of the hand",
        "posterior rami of spinal nerves",
    ],
)
def test_many_things_take_a_verb_of_many(text: str) -> None:
    assert agreeing(text, "is", "are") == "are"


@pytest.mark.parametrize("text", ["biceps brachii", "long head of biceps brachii", "extensor digitorum"])
def test_one_thing_takes_a_verb_of_one(text: str) -> None:
    assert agreeing(text, "is", "are") == "is"


def joint_named(name: str) -> Joint:
    return Joint(id="one", name=name, bones=(), links=(), movements=(), order=1)


@pytest.mark.parametrize(
    "name",
    ["elbow joint", "scapulothoracic articulation", "carpometacarpal joint of the thumb", "knee joints"],
)
def test_where_bones_meet_is_a_joint(name: str) -> None:
    assert is_true_joint(joint_named(name))


@pytest.mark.parametrize(
    "name",
    [
        "abdominal cavity",
        "dome of the diaphragm",
        "skin of the nose over the nasal bones",
        "capsule of the knee joint over the femur",
    ],
)
def test_what_merely_moves_is_none(name: str) -> None:
    assert not is_true_joint(joint_named(name))


def test_ribs_move_at_both_ends_at_once() -> None:
    assert "sternocostal_joints.elevation" in action_overlap("costovertebral_joints.elevation")
    assert "sternocostal_joints.depression" not in action_overlap("costovertebral_joints.elevation")
