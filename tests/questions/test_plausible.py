"""What a teacher would strike out at once: options that tempt nobody, or that another book calls right."""

from collections.abc import Iterator
from random import Random

import pytest

from quizroom.knowledge.segments import SEGMENTS
from quizroom.questions.ask import Ask
from quizroom.questions.build import build_item
from quizroom.questions.deck import DealPlan, deal
from quizroom.questions.distractors import candidates
from quizroom.questions.families import asks_of
from quizroom.questions.kindred import kindred_ranks
from quizroom.questions.lesion_reasons import reason_of_loss
from quizroom.questions.model import Family, Item
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.wrong_movements import lookalikes_at
from tests.questions.lists import catalogue, syllabus

WHOLE_BODY = "regional_gross_anatomy"
ANY_ORDER = Random(1)  # noqa: S311 -- a draw to be repeated, not secret
ARM = ("C5", "C6", "C7", "C8", "T1")


@pytest.fixture(scope="module")
def body() -> Syllabus:
    return syllabus(WHOLE_BODY)


def asks(body: Syllabus, family: Family, about: str) -> Iterator[Ask]:
    """What a family asks whose id holds some text."""
    return (ask for ask in asks_of(body, family) if about in ask.id)


def items(body: Syllabus, family: Family, about: str, seeds: range) -> list[Item]:
    made = [build_item(body, ask, "one_best", seed) for ask in asks(body, family, about) for seed in seeds]
    found = [item for item in made if item is not None]
    assert found, about
    return found


def options_of(item: Item) -> set[str]:
    return {option.concept for option in item.options if option.letter not in item.key}


def test_no_scapula_is_fixed_or_tilted_forward_in_a_wrong_option(body: Syllabus) -> None:
    """Moore lets the rhomboids fix the scapula; to tilt forward is to tilt anteriorly (from memory)."""
    assert "scapulothoracic.fixation" not in lookalikes_at(body, "scapulothoracic", "elevation")
    assert "scapulothoracic.forward_tilt" not in lookalikes_at(body, "scapulothoracic", "anterior_tilt")
    for ask in asks(body, "antagonist", "movement_to_opposite:posterior_tilt"):
        offered = {concept.partition(".")[2] for concept, _ in candidates(body, ask, ANY_ORDER)}
        assert not {"forward_tilt", "fixation"} & offered


def test_only_opposites_that_a_muscle_produces_are_asked_for(body: Syllabus) -> None:
    done = {value.partition(".")[2] for value in body.tables["action"].by_value}
    opposites = list(asks(body, "antagonist", "movement_to_opposite"))
    assert len(opposites) > 10
    assert {ask.key[0].partition(".")[2] for ask in opposites} <= done


def test_books_do_not_differ_on_what_the_opposite_of_a_movement_is(body: Syllabus) -> None:
    for item in items(body, "antagonist", "movement_to_opposite", range(1)):
        assert "Books differ" not in item.why.text


@pytest.mark.parametrize("muscle", ["pronator_quadratus", "tensor_fasciae_latae"])
def test_wrong_joints_are_of_the_limb_or_its_like(body: Syllabus, muscle: str) -> None:
    """Quadratus lumborum crosses lumbar joints, but nobody looks for the one of the forearm there."""
    for item in items(body, "joint", f"muscle_to_joint:{muscle}", range(4)):
        assert not any("lumb" in one or "scapulo" in one for one in options_of(item))


def test_no_sphincter_is_offered_for_a_joint(body: Syllabus) -> None:
    for ask in asks(body, "joint", "joint_to_muscle:costovertebral_joints"):
        offered = {concept for concept, _ in candidates(body, ask, ANY_ORDER)}
        assert not offered & {"puborectalis", "pyramidalis", "external_anal_sphincter"}


@pytest.mark.parametrize("muscle", ["extensor_digitorum", "extensor_indicis", "anconeus"])
def test_a_muscle_of_the_arm_has_wrong_segments_on_both_sides(body: Syllabus, muscle: str) -> None:
    """The brachial plexus comes from C5 to T1 (Gray 1918): beside it three thoracic segments tell the key."""
    for item in items(body, "root", f"muscle_to_segment:{muscle}:", range(8)):
        places = [SEGMENTS.index(option.concept) for option in item.options]
        key = SEGMENTS.index(next(one.concept for one in item.options if one.letter in item.key))
        assert SEGMENTS[key] in ARM
        assert min(places) < key < max(places)


def test_what_comes_by_other_segments_does_not_leave_a_trunk_by_a_branch(body: Syllabus) -> None:
    """Extensor indicis has C7 and C8 (Moore), which never run in the upper trunk."""
    ask = next(asks(body, "lesion", "injury_to_lost:upper_trunk"))
    told = reason_of_loss(body, ask, "extensor_indicis").text
    assert "with fibers from C7 and C8, which go another way: it is spared" in told


def test_what_some_books_let_leave_above_the_radial_groove_is_no_key(body: Syllabus) -> None:
    """Charts of muscle testing spare anconeus and triceps, Moore has the medial head weak (from memory)."""
    lost = {ask.key[0] for ask in asks(body, "lesion", "injury_to_lost:radial_nerve_in_radial_groove")}
    assert "brachioradialis" in lost
    assert not lost & {"anconeus", "articularis_cubiti", "triceps_brachii"}


def test_the_femur_is_no_wrong_bone_for_a_supracondylar_ridge(body: Syllabus) -> None:
    for ask in asks(body, "look_alike", "landmark_to_bone:humerus.lateral_supracondylar_ridge"):
        assert "femur" in ask.barred


@pytest.mark.parametrize(
    "site, too_little",
    [("atlas.transverse_process", "transverse process"), ("axis.spinous_process", "spinous process")],
)
def test_a_vertebra_must_be_named_where_all_have_the_like(site: str, too_little: str) -> None:
    landmark = catalogue().landmarks[site]
    assert too_little not in {landmark.name, landmark.label, *landmark.synonyms}


@pytest.mark.parametrize("nerve", ["recurrent_laryngeal_nerve"])
def test_no_branch_of_the_palm_is_offered_for_the_larynx(body: Syllabus, nerve: str) -> None:
    for ask in asks(body, "nerve", f":{nerve}"):
        if ask.kind == "nerve":
            offered = {concept for concept, _ in candidates(body, ask, ANY_ORDER)}
            assert "recurrent_branch_of_median_nerve" not in offered


@pytest.mark.parametrize("seed", range(3))
def test_no_question_comes_twice_in_a_review_with_another_key(seed: int) -> None:
    plan = DealPlan(families=("action", "prime_mover", "nerve"), rounds=15, seed=seed)
    stems = [item.stem for item in deal(catalogue(), catalogue().courses["kinesiology"], plan)]
    assert len(set(stems)) == len(stems)


def test_what_shares_but_a_bone_and_lies_far_away_comes_last(body: Syllabus) -> None:
    """Psoas major and trapezius both have the twelfth thoracic vertebra (Moore)."""
    sources = [source for source, muscles in kindred_ranks(body, "trapezius") if "psoas_major" in muscles]
    assert sources == ["neighbouring_landmark"]
    assert "psoas_major" in kindred_ranks(body, "trapezius")[-1][1]


def test_an_option_of_a_matching_of_bones_tells_the_landmark_that_it_has() -> None:
    bones = (one for one in asks_of(syllabus("intro_ap"), "matching") if "landmark_to_bone" in one.id)
    item = build_item(syllabus("intro_ap"), next(bones), "matching", 1)
    assert item is not None
    keyed = [option for option in item.options if option.letter in item.key]
    assert all("is a landmark of" in option.reason.text for option in keyed)
