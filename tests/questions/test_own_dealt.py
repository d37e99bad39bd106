"""A host's own item as it goes into a review."""

from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.questions.again import ask_again
from quizroom.questions.experience import ask_key
from quizroom.questions.own_dealt import dealt
from quizroom.questions.timing import STEPS
from quizroom.questions.typed import verdict
from tests.questions.lists import REGIONAL, syllabus
from tests.questions.own_samples import DRAWING, best, picked, typed


@given(seed=st.integers(0, 2**31))
@settings(max_examples=30)
def test_options_change_places_and_keep_their_reasons(seed: int) -> None:
    own = picked()
    item = dealt(own, "i1", syllabus(REGIONAL), seed)
    written = {option.text: (option.reason, option.is_key) for option in own.options}
    assert [option.letter for option in item.options] == list("ABCDE")
    assert {o.text: (o.reason.text, o.letter in item.key) for o in item.options} == written
    assert item == dealt(own, "i1", syllabus(REGIONAL), seed)
    assert (item.by_host, item.pick) == (True, 2)


def test_the_key_stands_at_every_place_in_turn_unless_the_order_is_kept() -> None:
    letters = {dealt(best(), "i1", syllabus(REGIONAL), seed).key for seed in range(40)}
    assert letters == {("A",), ("B",), ("C",)}
    assert {dealt(best(keeps_order=True), "i1", syllabus(REGIONAL), seed).key for seed in range(9)} == {
        ("A",)
    }


def test_the_records_of_its_muscles_and_its_picture_go_with_it() -> None:
    item = dealt(best(), "i1", syllabus(REGIONAL), 1)
    assert [record.muscle for record in item.records] == ["extensor_indicis"]
    assert item.picture == DRAWING
    assert item.seconds in STEPS
    assert dealt(best(seconds=75), "i1", syllabus(REGIONAL), 1).seconds == 75


def test_typed_answers_are_judged_as_everywhere() -> None:
    item = dealt(typed(), "i1", syllabus(REGIONAL), 1)
    assert {text: verdict(item, text).kind for text in ("Hamate", "os hamatum", "hamat", "lunate")} == {
        "Hamate": "right",
        "os hamatum": "right",
        "hamat": "right",
        "lunate": "wrong",
    }


def test_a_synonym_that_was_not_named_is_no_other_thing_but_a_neighbour_is() -> None:
    own = typed(stem="Which muscle is it?", accepted=("extensor carpi radialis longus",), why="So it is.")
    item = dealt(own, "i1", syllabus(REGIONAL), 1)
    assert verdict(item, "extensor carpi radialis brevis").kind == "wrong"
    assert verdict(item, "extensor carpi radialis brevis").concept == "extensor_carpi_radialis_brevis"


def test_classes_answers_to_it_are_counted_by_its_id_however_it_is_mended() -> None:
    first = dealt(best(), "i1", syllabus(REGIONAL), 1)
    mended = dealt(best(stem="Which band is it, at the wrist?"), "i1", syllabus(REGIONAL), 2)
    other = dealt(best(), "i2", syllabus(REGIONAL), 1)
    assert ask_key(first) == ask_key(mended) != ask_key(other)
    assert first.id != mended.id


def test_it_is_asked_again_as_it_was() -> None:
    item = dealt(best(family="nerve"), "i1", syllabus(REGIONAL), 1)
    assert ask_again(syllabus(REGIONAL), item, 7) is item
