"""What the host alone sees."""

from dataclasses import replace

import pytest

from quizroom.marking import marks_of_room
from quizroom.questions.model import Observed
from quizroom.room.commands import (
    EndReview,
    OpenRound,
    PauseRound,
    RemovePlayer,
    StrikeItem,
)
from quizroom.room.state import Room
from quizroom.views.desk_actions import desk_actions
from quizroom.views.public import public_view
from tests.room.sample_items import one_best, pick_three, typed
from tests.room.samples import CLOSE, RECORD, answering, gathered, ordered, plan, prepared, says, seat, writes
from tests.views.seen import desk
from tests.views.twins import NOW


def test_the_desk_holds_the_public_view_as_it_is() -> None:
    room = answering()
    assert desk(room).public == public_view(room, marks_of_room(room), NOW)


def test_the_host_sees_the_distribution_with_keys_and_reasons_while_the_round_is_open() -> None:
    room = ordered(
        answering(one_best(key="B"), players=("ada", "bo", "cem")), says("ada", "B"), says("bo", "C")
    )
    item = desk(room).items[0]
    assert [(option.letter, option.is_key, option.count) for option in item.options] == [
        ("A", False, 0),
        ("B", True, 1),
        ("C", False, 1),
        ("D", False, 0),
    ]
    assert item.options[2].reason == "Because: median nerve."
    assert (item.state, item.key_text, item.mean_mark) == ("open", ("axillary nerve",), None)


@pytest.mark.parametrize(
    "difficulty,word",
    [(None, None), (0.1, "easy"), (0.44, "easy"), (0.45, "middling"), (0.6, "hard"), (1.0, "hard")],
)
def test_the_host_sees_region_and_predicted_difficulty(difficulty: float | None, word: str | None) -> None:
    item = replace(one_best(), difficulty=difficulty, warm_up=True)
    seen_item = desk(prepared(item)).items[0]
    assert (seen_item.region, seen_item.predicted, seen_item.warm_up) == (item.records[0].region, word, True)


def test_the_host_sees_what_classes_did_with_a_question_beside_the_prediction() -> None:
    # 17 of 24 right: 95 % interval 0.508-0.851 (the trade's handbook 4.5, computed with statsmodels)
    item = replace(one_best(), difficulty=0.7, observed=Observed(answered=24, right=17, whose="course"))
    shown = desk(prepared(item)).items[0]
    assert shown.predicted == "hard"
    assert shown.observed is not None
    assert (round(shown.observed.low, 3), round(shown.observed.high, 3)) == (0.508, 0.851)
    assert (shown.observed.right, shown.observed.answered, shown.observed.whose) == (0.7083, 24, "course")
    assert desk(prepared(replace(item, observed=None))).items[0].observed is None


def test_items_ahead_are_numbered_on_and_have_their_places() -> None:
    room = answering(one_best(), typed(), pick_three(), by=plan(timing="fixed", seconds=50))
    faces = [(item.id, item.round, item.position, item.state, item.seconds) for item in desk(room).items]
    assert faces == [
        ("one-best", 1, None, "open", 50),
        ("typed", 2, 0, "ahead", 50),
        ("pick-three", 3, 1, "ahead", 50),
    ]


def test_a_closed_item_has_its_mean_mark_and_its_state() -> None:
    room = ordered(answering(), says("ada", "B"), says("bo", "A"), CLOSE, StrikeItem(round=1))
    assert [(item.state, item.mean_mark, item.struck) for item in desk(room).items][:1] == [
        ("closed", 0.5, True)
    ]
    assert desk(ordered(room, RECORD)).items[0].state == "explained"


def test_the_host_reads_typed_words_as_written_with_the_verdict_on_each() -> None:
    room = ordered(answering(typed()), writes("ada", "Axilary nerve"), writes("bo", "qqqq"))
    lines = [(line.text, line.verdict, line.count) for line in desk(room).items[0].typed]
    assert lines == [("axilary nerve", "half", 1), ("qqqq", "wrong", 1)]


def test_the_roster_goes_by_handle_and_tells_who_has_answered() -> None:
    room = ordered(answering(players=("bo", "ada")), says("bo", "B"), seat("cem"), RemovePlayer(player="ada"))
    assert [(row.handle, row.answered, row.from_round) for row in desk(room).roster] == [
        ("Bo", True, 1),
        ("Cem", False, 1),
    ]


@pytest.mark.parametrize(
    "room,actions",
    [
        (prepared(), ("open_door",)),
        (gathered(), ("open_round", "end_review")),
        (answering(), ("close_round", "pause_round", "add_time", "strike_item", "end_review")),
        (
            ordered(answering(), PauseRound(round=1)),
            ("close_round", "resume_round", "add_time", "strike_item", "end_review"),
        ),
        (answering(by=plan(timing="untimed")), ("close_round", "strike_item", "end_review")),
        (ordered(answering(), CLOSE), ("show_record", "open_round", "strike_item", "end_review")),
        (ordered(answering(one_best()), CLOSE, RECORD), ("end_review", "strike_item")),
        (ordered(answering(), CLOSE, StrikeItem(round=1), EndReview()), ("restore_item",)),
        (ordered(gathered(), EndReview()), ()),
    ],
)
def test_the_desk_offers_what_may_be_done_now_the_next_step_first(
    room: Room, actions: tuple[str, ...]
) -> None:
    assert desk_actions(room) == actions


def test_the_next_step_of_an_explained_round_is_the_next_round() -> None:
    room = ordered(answering(), CLOSE, RECORD)
    assert desk_actions(room)[0] == "open_round"
    assert ordered(room, OpenRound(round=2)).phase == "answering"
