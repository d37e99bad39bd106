"""Flags of players: idempotent, limited, for the host alone and without who."""

import re
from dataclasses import replace

import pytest
from hypothesis import given, settings

from quizroom.marking import marks_of_room
from quizroom.room.change_commands import FlagItem, SettleFlags, UnflagItem
from quizroom.room.change_events import ItemFlagged
from quizroom.room.commands import EndReview, OpenRound, RemovePlayer
from quizroom.room.events import Event, RoundOpened, SeatEntered
from quizroom.room.flags import MOST_TIMES
from quizroom.room.group_state import GroupRules
from quizroom.room.laying_out import prepare
from quizroom.room.owner_commands import ForgetPlayer
from quizroom.room.owner_events import PlayerForgotten
from quizroom.room.owners import redacted
from quizroom.room.rules import decide
from quizroom.room.state import Room
from quizroom.views.changes_model import FlagsFace, FlagText, OwnFlag
from quizroom.views.desk import desk_view
from quizroom.views.own import own_view
from tests.room.histories import History, histories, played
from tests.room.refusing import code_of
from tests.room.sample_items import one_best
from tests.room.samples import CLOSE, NOON, answering, ordered, plan, preparation, seat
from tests.views.twins import told_to_player, told_to_wall

OPENED = RoundOpened(round=1, at=NOON, closes_at=None)
SAID = "Is it not the radial nerve?"


def flag(player: str = "ada", text: str = "", round_: int = 1) -> FlagItem:
    return FlagItem(player=player, round=round_, text=text)


def unflag(player: str = "ada") -> UnflagItem:
    return UnflagItem(player=player, round=1)


def settle(*, on: bool = True) -> SettleFlags:
    return SettleFlags(round=1, settled=on, by="M. Sorrel")


def on_desk(room: Room) -> FlagsFace:
    return desk_view(room, marks_of_room(room), NOON).items[0].flags


def own(room: Room, player: str = "ada") -> OwnFlag | None:
    return own_view(room, player, marks_of_room(room), NOON).flag


@pytest.mark.parametrize(
    "room", [answering(), ordered(answering(), CLOSE), ordered(answering(), CLOSE, EndReview())]
)
def test_a_flag_may_be_put_up_during_the_round_and_any_time_after(room: Room) -> None:
    flagged = ordered(room, flag(text=f" {SAID} "), flag("bo"))
    assert on_desk(flagged) == FlagsFace(up=2, waiting=2, texts=(FlagText(text=SAID, settled=False),))
    assert (own(flagged), own(room)) == (OwnFlag(round=1, text=SAID), None)


def test_the_same_flag_again_changes_nothing_and_other_words_replace_the_first() -> None:
    room = ordered(answering(), flag(text=SAID))
    assert decide(room, flag(text=SAID), NOON) == ()
    assert on_desk(ordered(room, flag(text="B"))).texts == (FlagText(text="B", settled=False),)


def test_a_flag_can_be_taken_back_once_and_put_up_again() -> None:
    room = ordered(answering(), flag(text=SAID), unflag())
    assert on_desk(room) == FlagsFace(up=0, waiting=0, texts=())
    assert own(room) is None
    assert decide(room, unflag(), NOON) == decide(answering(), unflag(), NOON) == ()
    assert on_desk(ordered(room, flag())).up == 1


def test_the_host_settles_flags_and_a_new_one_waits_again() -> None:
    room = ordered(answering(), flag(text=SAID), settle())
    assert on_desk(room) == FlagsFace(up=1, waiting=0, texts=(FlagText(text=SAID, settled=True),))
    assert decide(room, settle(), NOON) == ()
    assert on_desk(ordered(room, flag("bo"))).waiting == 1
    assert on_desk(ordered(room, settle(on=False))).waiting == 1
    assert decide(answering(), settle(), NOON) == ()


@pytest.mark.parametrize(
    "room,command,code",
    [
        (answering(), flag(text="x" * 201), "words_too_long"),
        (answering(), flag("nobody"), "no_such_player"),
        (answering(), flag(round_=2), "no_such_round"),
        (answering(), flag(round_=0), "no_such_round"),
        (answering(), SettleFlags(round=2, settled=True), "no_such_round"),
        (ordered(answering(), CLOSE, seat("cem")), flag("cem"), "no_such_round"),
    ],
)
def test_what_does_not_fit_is_refused(room: Room, command: FlagItem | SettleFlags, code: str) -> None:
    assert code_of(room, command) == code


def test_nobody_fills_the_log_with_flags_but_the_last_can_be_taken_back() -> None:
    room = answering()
    for number in range(MOST_TIMES):
        room = ordered(room, flag(text=str(number)))
    assert code_of(room, flag(text="once more")) == "flagged_too_often"
    assert on_desk(ordered(room, unflag())).up == 0


def test_a_player_who_is_sent_out_takes_the_flag_along() -> None:
    assert on_desk(ordered(answering(), flag(text=SAID), RemovePlayer(player="ada"))).up == 0


def test_of_a_forgotten_player_the_flag_stays_without_its_words_in_the_room_and_in_the_log() -> None:
    room = ordered(answering(), flag(text=SAID), ForgetPlayer(player="ada"))
    assert on_desk(room) == FlagsFace(up=1, waiting=1, texts=())
    (deed,) = decide(answering(), ForgetPlayer(player="ada"), NOON)
    assert isinstance(deed, PlayerForgotten)
    flags = [ItemFlagged(player=player, round=1, text=SAID, at=NOON) for player in ("ada", "bo")]
    log = [*prepare("room-1", preparation(), NOON), *entered("ada", "bo"), OPENED, *flags]
    assert redacted(log, deed)[-2:] == (replace(flags[0], text=""), flags[1])


def test_in_a_group_nobody_would_read_a_flag() -> None:
    room = answering(by=replace(plan(), group=GroupRules(reading_s=60, hours=12)))
    assert code_of(room, flag()) == "no_desk"


def test_a_seat_is_told_of_its_flag_for_the_current_round() -> None:
    room = ordered(answering(one_best(), one_best("2")), flag(text=SAID), CLOSE)
    assert own(room) == OwnFlag(round=1, text=SAID)
    assert own(ordered(room, OpenRound(round=2))) is None


def test_a_seat_is_told_of_all_its_flags_and_of_nobody_elses() -> None:
    room = ordered(
        answering(one_best(), one_best("2")), flag(text=SAID), flag("bo"), CLOSE, OpenRound(round=2)
    )
    room = ordered(room, flag(round_=2))
    seen = own_view(room, "ada", marks_of_room(room), NOON)
    assert seen.flags == (OwnFlag(round=1, text=SAID), OwnFlag(round=2, text=""))


def test_a_flag_from_a_second_look_shows_what_was_asked_there() -> None:
    room = ordered(answering(), replace(flag(), asked="Which nerve supplies it?"))
    assert on_desk(room).texts == (FlagText(text="", settled=False, asked="Which nerve supplies it?"),)
    assert on_desk(ordered(room, unflag(), flag())).texts == ()


@settings(max_examples=25, deadline=None)
@given(histories())
def test_nothing_that_others_see_depends_on_a_flag(history: History) -> None:
    for step in played(history):
        if not isinstance(step.command, (FlagItem, UnflagItem, SettleFlags)):
            continue
        before, now = step.before, step.room
        assert without_version(told_to_wall(before)) == without_version(told_to_wall(now))
        for player in now.players:
            if isinstance(step.command, SettleFlags) or player != step.command.player:
                seen = (told_to_player(room, player) for room in (before, now))
                assert len({without_version(one) for one in seen}) == 1


def entered(*players: str) -> list[Event]:
    """Their entrances as they stand in a log."""
    return [SeatEntered(player=one, handle=one, key_hash=f"hash of {one}", from_round=1) for one in players]


def without_version(told: bytes) -> bytes:
    """What was told, but for the number that every event moves on."""
    return re.sub(rb'"version":\d+', b"", told)
