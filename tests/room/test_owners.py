"""Whose history a seat belongs to, and what is left of somebody who wants to be forgotten."""

from collections.abc import Iterable
from dataclasses import replace

import pytest
from hypothesis import given, settings

from quizroom.marking import marks_of_room
from quizroom.room.bench_commands import AnswerForBench, RenameBench, TakeBench
from quizroom.room.bench_state import BenchRules
from quizroom.room.commands import (
    CloseRound,
    Command,
    EndReview,
    EnterSeat,
    OpenDoor,
    OpenRound,
    RemovePlayer,
    RenamePlayer,
    RuleOnWords,
)
from quizroom.room.events import Event
from quizroom.room.folding import replay
from quizroom.room.laying_out import prepare
from quizroom.room.owner_commands import ForgetPlayer, LinkSeat
from quizroom.room.owner_events import PlayerForgotten, SeatLinked
from quizroom.room.owners import redacted
from quizroom.room.rules import decide
from quizroom.room.state import Room
from quizroom.storage.event_codec import write_event
from tests.room.histories import History, histories, laying_out, played
from tests.room.refusing import code_of
from tests.room.sample_items import typed
from tests.room.samples import (
    NOON,
    answering,
    folded,
    gathered,
    ordered,
    plan,
    preparation,
    seat,
    writes,
)

OWNER = "a" * 64
LINKED = SeatLinked(player="ada", owner=OWNER, at=NOON)


def forgotten(room: Room, player: str) -> PlayerForgotten:
    (event,) = decide(room, ForgetPlayer(player=player), NOON)
    assert isinstance(event, PlayerForgotten)
    return event


def test_a_seat_taken_with_a_key_belongs_to_its_history_from_the_start() -> None:
    kept = EnterSeat(player="cem", handle="Cem", key_hash="c", owner=OWNER)
    assert ordered(gathered(), kept).players["cem"].owner == OWNER


def test_a_seat_can_be_linked_later_and_let_go_again_even_after_the_review() -> None:
    room = ordered(gathered(), EndReview())
    assert decide(room, LinkSeat(player="ada", owner=OWNER), NOON) == (LINKED,)
    kept = folded(room, [LINKED])
    assert decide(kept, LinkSeat(player="ada", owner=OWNER), NOON) == ()
    assert ordered(kept, LinkSeat(player="ada", owner="")).players["ada"].owner == ""


def test_nobody_links_a_seat_that_is_not_there() -> None:
    assert code_of(gathered(), LinkSeat(player="nobody", owner=OWNER)) == "no_such_player"


def test_letting_go_takes_the_key_out_of_what_was_logged_before_and_nothing_else() -> None:
    log = log_of(LinkSeat(player="ada", owner=OWNER), LinkSeat(player="bo", owner="b" * 64))
    past = redacted(log, SeatLinked(player="ada", owner="", at=NOON))
    assert OWNER.encode() not in written(past)
    assert ("b" * 64).encode() in written(past)
    assert [type(event) for event in past] == [type(event) for event in log]


def test_a_forgotten_player_keeps_marks_but_no_name_and_no_key() -> None:
    room = ordered(answering(typed()), writes("ada", "axillary nerve"), CloseRound(round=1, by_host=True))
    after = ordered(room, ForgetPlayer(player="ada"))
    assert after.players["ada"].handle == "Former player 1"
    assert after.players["ada"].key_hash == after.players["ada"].owner == ""
    assert marks_of_room(after).totals == marks_of_room(room).totals
    assert decide(after, ForgetPlayer(player="ada"), NOON) == ()


def test_former_players_are_told_apart_and_from_one_who_took_that_name() -> None:
    room = ordered(
        gathered(), RenamePlayer(player="bo", handle="former player 1"), ForgetPlayer(player="ada")
    )
    assert room.players["ada"].handle == "Former player 2"


def test_somebody_who_was_sent_out_can_be_forgotten_too() -> None:
    room = ordered(gathered(), RemovePlayer(player="ada"))
    log = log_of(RemovePlayer(player="ada"))
    assert b"Ada" in written(log)
    assert b"Ada" not in written(redacted(log, forgotten(room, "ada")))


def test_words_that_no_term_explains_are_forgotten_and_count_as_before() -> None:
    said = ("I am Ada Alder of lab 3", "axilary nerve", "radial nerve")
    for words in said:
        room = ordered(answering(typed()), writes("ada", words), CloseRound(round=1, by_host=True))
        after = ordered(room, ForgetPlayer(player="ada"))
        assert (after.rounds[0].answers["ada"].typed == (words,)) is (words != said[0])
        assert marks_of_room(after).rounds[0].marks == marks_of_room(room).rounds[0].marks


def test_words_on_which_the_host_ruled_stay_since_the_ruling_needs_them() -> None:
    rude = "my own word"
    room = ordered(
        answering(typed()),
        writes("ada", rude),
        CloseRound(round=1, by_host=True),
        RuleOnWords(round=1, words=rude, accept=True),
        ForgetPlayer(player="ada"),
    )
    assert room.rounds[0].answers["ada"].typed == (rude,)


WORDS = "I am Ada Alder of lab 3"


def for_bench(bench: str, *commands: Command) -> tuple[list[Event], Room]:
    """A log in which Ada hands in words of her own for this bench, and these orders follow."""
    at_benches = replace(plan(timing="untimed"), benches=BenchRules(how="choice"))
    log: list[Event] = list(prepare("room-1", preparation(typed(), by=at_benches), NOON))
    room = replay(log)
    assert room is not None
    handed_in = AnswerForBench(player="ada", round=1, typed=(WORDS,))
    takes = (TakeBench(player="ada", bench=bench), TakeBench(player="bo", bench=bench))
    opened = (OpenDoor(door_code="CDFHJ"), seat("ada"), seat("bo"), *takes, OpenRound(round=1))
    for command in (*opened, writes("ada", "radial nerve"), handed_in, *commands):
        events = decide(room, command, NOON)
        room = folded(room, events)
        log += events
    assert WORDS.encode() in written(log)
    return log, room


@pytest.mark.parametrize(
    "since",
    [
        [],
        [TakeBench(player="ada", bench="Tarsals")],
        [TakeBench(player="ada", bench="")],
        [RenameBench(bench="Carpals", name="Phalanges", by="M. Sorrel")],
        [
            RenameBench(bench="Carpals", name="Phalanges", by="M. Sorrel"),
            RenameBench(bench="Phalanges", name="Metacarpals", by="M. Sorrel"),
        ],
    ],
)
@pytest.mark.parametrize("who", ["ada", "bo"])
def test_words_for_a_bench_are_forgotten_wherever_who_wrote_them_sits_by_now(
    who: str, since: list[Command]
) -> None:
    log, room = for_bench("Carpals", CloseRound(round=1, by_host=True), *since)
    deed = forgotten(room, who)
    after = [*redacted(log, deed), deed]
    assert WORDS.encode() not in written(after)
    assert replay(after) == folded(room, [deed])


@settings(max_examples=40, deadline=None)
@given(histories())
def test_whatever_happened_the_log_after_forgetting_gives_the_same_room_and_marks(history: History) -> None:
    log: list[Event] = list(prepare("room-1", laying_out(), NOON))
    room = replay(log)
    assert room is not None
    for step in played(history):
        log += step.events
        room = step.room
    for player in list(room.players):
        deed = forgotten(room, player)
        marks = marks_of_room(room)
        log = [*redacted(log, deed), deed]
        room = folded(room, [deed])
        assert replay(log) == room
        assert marks_of_room(room).totals == marks.totals
        assert f"hash of {player}".encode() not in written(log)
    assert all(player.handle.startswith("Former player ") for player in room.players.values())


def log_of(*commands: LinkSeat | RemovePlayer) -> list[Event]:
    """A log in which Ada and Bo sit down and these orders follow."""
    log: list[Event] = list(prepare("room-1", laying_out(), NOON))
    room = replay(log)
    assert room is not None
    for command in (OpenDoor(door_code="CDFHJ"), seat("ada"), seat("bo"), *commands):
        events = decide(room, command, NOON)
        room = folded(room, events)
        log += events
    return log


def written(events: Iterable[Event]) -> bytes:
    """What stands in the log."""
    return b"\n".join(write_event(event) for event in events)
