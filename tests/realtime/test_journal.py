"""The operator's log: steps of a review, and nothing that single people did."""

import logging

import pytest

from quizroom.realtime.journal import NOT_TOLD, note_steps
from quizroom.room.events import AnswerAccepted, RoundOpened, SeatEntered
from quizroom.service.rooms import Change
from tests.room.samples import NOON, gathered

SEATED = SeatEntered(player="p9", handle="Ada Alder", key_hash="f" * 64, from_round=1)
ANSWERED = AnswerAccepted(player="p9", round=1, choice=("A",), typed=("ulnar nerve",), at=NOON)


def test_a_step_is_logged_with_its_room_and_round(caplog: pytest.LogCaptureFixture) -> None:
    caplog.set_level(logging.INFO)
    room = gathered(players=("ada",))
    note_steps(Change(room=room, events=(RoundOpened(round=1, at=NOON, closes_at=None),)))
    (record,) = caplog.records
    assert vars(record).items() >= {"step": "RoundOpened", "room": room.id, "round": 0, "players": 1}.items()


def test_what_another_worker_did_is_in_its_own_log_alone(caplog: pytest.LogCaptureFixture) -> None:
    caplog.set_level(logging.INFO)
    opened = RoundOpened(round=1, at=NOON, closes_at=None)
    note_steps(Change(room=gathered(players=("ada",)), events=(opened,), ours=False))
    assert caplog.records == []


def test_players_and_their_answers_are_not_logged(caplog: pytest.LogCaptureFixture) -> None:
    caplog.set_level(logging.DEBUG)
    note_steps(Change(room=gathered(players=("ada",)), events=(SEATED, ANSWERED)))
    assert caplog.records == []
    assert {SeatEntered, AnswerAccepted} <= set(NOT_TOLD)
