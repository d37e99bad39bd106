"""What is wrong with a host's own item is told at its field, with what to do."""

from dataclasses import replace

import pytest

from quizroom.questions.model import Item
from quizroom.questions.own import OwnItem, OwnOption, tidied
from quizroom.questions.own_dealt import dealt
from quizroom.questions.own_findings import is_ready
from quizroom.questions.own_rules import LONGEST_STEM, findings
from quizroom.questions.rules import ITEM_RULES, breaches
from tests.questions.lists import REGIONAL, syllabus
from tests.questions.own_samples import DRAWING, best, picked, typed

KEY, WRONG, OTHER = best().options


def told(own: OwnItem) -> set[tuple[str, str, bool]]:
    return {(one.field, one.rule, one.error) for one in findings(own, syllabus(REGIONAL))}


@pytest.mark.parametrize("own", [best(), picked(), typed()], ids=lambda own: own.format)
def test_a_whole_item_has_nothing_to_mend(own: OwnItem) -> None:
    assert told(own) == set()
    assert is_ready(findings(own, syllabus(REGIONAL)))


@pytest.mark.parametrize(
    "own,field,rule",
    [
        (best(stem=""), "stem", "stem_is_there"),
        (best(stem="word " * LONGEST_STEM + "end?"), "stem", "stem_fits_the_wall"),
        (best(stem="x" * 501), "stem", "stem_fits_the_wall"),
        (best(options=(replace(KEY, is_key=False), WRONG, OTHER)), "key", "key_is_there"),
        (best(options=(KEY, replace(WRONG, is_key=True), OTHER)), "key", "key_is_there"),
        (
            best(options=(KEY, WRONG, replace(OTHER, text="Flexor RETINACULUM"))),
            "options.2.text",
            "options_differ",
        ),
        (best(options=(KEY, WRONG, replace(OTHER, reason=""))), "options.2.reason", "options_have_reasons"),
        (best(options=(KEY, WRONG, replace(OTHER, text=""))), "options.2.text", "options_are_filled"),
        (
            best(options=(KEY, WRONG, replace(OTHER, text="x" * 121))),
            "options.2.text",
            "options_fit_the_wall",
        ),
        (
            best(options=(KEY, WRONG, replace(OTHER, reason="x" * 601))),
            "options.2.reason",
            "reasons_are_short",
        ),
        (best(options=(KEY,)), "options", "options_can_be_counted"),
        (
            best(options=(KEY, *(OwnOption(text=f"o{n}", reason="r") for n in range(5)))),
            "options",
            "options_can_be_counted",
        ),
        (best(picture=replace(DRAWING, alt="")), "picture.alt", "picture_has_words"),
        (best(picture=replace(DRAWING, credit="")), "picture.credit", "picture_says_whose_it_is"),
        (best(muscles=("no_such_muscle",)), "muscles", "muscles_are_known"),
        (best(seconds=2), "seconds", "time_is_possible"),
        (picked(why="x" * 601), "why", "key_has_a_reason"),
        (replace(picked(), options=picked().options[:2]), "key", "key_is_there"),
        (typed(accepted=()), "accepted", "key_is_there"),
        (typed(accepted=tuple(f"bone {n}" for n in range(21))), "accepted", "spellings_are_few"),
        (typed(why=""), "why", "key_has_a_reason"),
    ],
)
def test_an_error_keeps_an_item_out_whatever_was_taken(own: OwnItem, field: str, rule: str) -> None:
    assert (field, rule, True) in told(own)
    assert not is_ready(findings(replace(own, taken=(rule,)), syllabus(REGIONAL)))


@pytest.mark.parametrize(
    "own,field,rule",
    [
        (best(stem="The band at the wrist is ..."), "stem", "stem_is_one_question"),
        (best(stem="Which band does NOT lie at the wrist?"), "stem", "stem_is_positive"),
        (
            best(options=(KEY, WRONG, OwnOption(text="none of these", reason="One is right."))),
            "options",
            "options_claim_no_others",
        ),
        (best(options=(KEY, WRONG)), "options", "options_are_enough"),
        (
            best(options=(replace(KEY, text="the extensor retinaculum, which is the longest"), WRONG, OTHER)),
            "options",
            "key_is_not_the_longest",
        ),
        (
            best(picture=replace(DRAWING, alt="The extensor retinaculum, drawn.")),
            "picture.alt",
            "picture_keeps_the_key",
        ),
        (typed(stem="What hooks to the os hamatum?"), "stem", "stem_keeps_the_answer"),
    ],
)
def test_a_warning_may_be_taken_knowingly(own: OwnItem, field: str, rule: str) -> None:
    assert (field, rule, False) in told(own)
    assert not is_ready(findings(own, syllabus(REGIONAL)))
    rules = tuple(one.rule for one in findings(own, syllabus(REGIONAL)))
    assert is_ready(findings(replace(own, taken=rules), syllabus(REGIONAL)))


def test_every_rule_of_the_trade_that_an_own_item_can_break_says_what_to_do() -> None:
    advised = {one.rule: one.text for own in BREAKING for one in findings(own, syllabus(REGIONAL))}
    exempt = {"options_differ", "options_are_homogeneous"}  # an error of its own; own options are of one sort
    assert {rule.__name__ for rule in ITEM_RULES} - exempt <= advised.keys()
    assert all(text.endswith(".") and text.count(".") >= 2 for text in advised.values())


BREAKING = (
    best(stem="The " + "very " * 26 + "long band that is not an"),
    best(stem="Which band is an?"),
    best(options=(KEY, replace(WRONG, text="all of the above"))),
    best(options=(replace(KEY, text="the whole extensor retinaculum of the wrist"), WRONG, OTHER)),
    best(stem="Which retinaculum is it?", options=(KEY, replace(WRONG, text="lacertus"), OTHER)),
)


def test_what_cannot_be_seen_is_taken_out() -> None:
    raw = best(stem=" Which\u202e band \u0000 is\n it? ", picture=None)
    assert tidied(raw).stem == "Which band is it?"
    assert tidied(typed(accepted=(" hamate ", "", "hamate"))).accepted == ("hamate",)


def test_generated_items_and_own_items_obey_the_same_rules() -> None:
    # The warnings are those of `breaches` and nothing else, beside the three that only a host can break.
    own = best(stem="The band is not an")
    rules = {one.rule for one in findings(own, syllabus(REGIONAL))}
    assert rules == {rule for rule, _ in breaches(as_item(own))}


def as_item(own: OwnItem) -> Item:
    return dealt(own, "checked", syllabus(REGIONAL), 1)
