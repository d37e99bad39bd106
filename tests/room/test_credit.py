"""Who players are on the roster: one seat an entry, few tries, and the host has the last word."""

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.room.commands import CloseRound, Command, EndReview, OpenDoor, RemovePlayer
from quizroom.room.credit import MOST_MISSED_CLAIMS, tries_left
from quizroom.room.credit_commands import AssignEntry, ClaimEntry, MissClaim, SetRoster
from quizroom.room.credit_events import ClaimMissed, EntryAssigned, EntryClaimed, RosterSet
from quizroom.room.events import Event
from quizroom.room.folding import replay
from quizroom.room.laying_out import prepare
from quizroom.room.owner_commands import ForgetPlayer
from quizroom.room.owner_events import PlayerForgotten
from quizroom.room.owners import redacted
from quizroom.room.refusals import Refused
from quizroom.room.rules import decide
from quizroom.room.state import Plan, Room
from quizroom.storage.event_codec import read_event, write_event
from tests.room.refusing import code_of
from tests.room.samples import NOON, answering, folded, gathered, ordered, plan, preparation, seat

FOR_CREDIT: Plan = replace(plan(), roster="r1")
ADAS, BOS = ClaimEntry(player="ada", entry="e1"), ClaimEntry(player="bo", entry="e2")


def credited(*commands: Command) -> Room:
    """A review for credit with Ada and Bo in it, after these orders."""
    return ordered(gathered(by=FOR_CREDIT), *commands)


def missed(order: str, player: str = "ada") -> MissClaim:
    """Somebody has given an id that is not there."""
    return MissClaim(player=player, order=order)


def test_a_player_claims_one_entry_and_a_repeat_changes_nothing() -> None:
    room = credited(ADAS)
    assert room.claims == {"ada": "e1"}
    assert decide(room, ADAS, NOON) == ()
    assert code_of(room, ClaimEntry(player="ada", entry="e3")) == "has_claimed"


def test_one_entry_is_for_one_seat() -> None:
    assert code_of(credited(ADAS), ClaimEntry(player="bo", entry="e1")) == "id_is_taken"
    assert code_of(credited(ADAS), AssignEntry(player="bo", entry="e1")) == "id_is_taken"


@pytest.mark.parametrize("when", ["answering", "closed", "finished"])
def test_it_may_be_claimed_in_every_phase(when: str) -> None:
    room = answering(by=FOR_CREDIT)
    if when != "answering":
        room = ordered(room, CloseRound(round=1, by_host=True))
    if when == "finished":
        room = ordered(room, EndReview())
    assert ordered(room, ADAS).claims == {"ada": "e1"}


@pytest.mark.parametrize("command", [ADAS, missed("m"), AssignEntry(player="ada", entry="e1")])
def test_without_a_roster_there_is_nothing_to_claim(command: Command) -> None:
    assert code_of(gathered(), command) == "not_for_credit"


def test_tries_are_limited_for_each_seat_and_the_host_gives_new_ones() -> None:
    room = credited(*[missed(str(number)) for number in range(MOST_MISSED_CLAIMS)])
    assert tries_left(room, "ada") == 0
    assert tries_left(room, "bo") == MOST_MISSED_CLAIMS
    assert code_of(room, missed("m")) == code_of(room, ADAS) == "no_tries_left"
    assert ordered(room, BOS).claims == {"bo": "e2"}
    fresh = ordered(room, AssignEntry(player="ada", entry=""))
    assert tries_left(fresh, "ada") == MOST_MISSED_CLAIMS
    assert decide(fresh, AssignEntry(player="ada", entry=""), NOON) == ()


def test_a_miss_that_is_sent_again_costs_no_second_try_and_who_has_claimed_tries_no_more() -> None:
    room = credited(missed("m"))
    assert decide(room, missed("m"), NOON) == ()
    assert tries_left(room, "ada") == MOST_MISSED_CLAIMS - 1
    assert code_of(ordered(room, ADAS), missed("n")) == "has_claimed"


def test_the_host_undoes_and_assigns() -> None:
    room = credited(ADAS)
    (undone,) = decide(room, AssignEntry(player="ada", entry=""), NOON)
    assert undone == EntryAssigned(player="ada", entry="", at=NOON)
    assert folded(room, [undone]).claims == {}
    assert ordered(
        room, AssignEntry(player="ada", entry="e3"), ClaimEntry(player="bo", entry="e1")
    ).claims == {
        "ada": "e3",
        "bo": "e1",
    }


def test_whoever_is_sent_out_frees_the_entry() -> None:
    assert ordered(
        credited(ADAS), RemovePlayer(player="ada"), ClaimEntry(player="bo", entry="e1")
    ).claims == {"bo": "e1"}


def test_former_players_are_nobody_and_cannot_be_assigned() -> None:
    room = credited(ADAS, missed("m", "bo"), ForgetPlayer(player="ada"))
    assert (room.claims, room.missed_claims) == ({}, {"bo": ("m",)})
    assert code_of(room, AssignEntry(player="ada", entry="e1")) == "no_such_player"
    assert code_of(room, ClaimEntry(player="nobody", entry="e1")) == "no_such_player"


def test_the_events_are_read_back_and_hold_opaque_ids_alone() -> None:
    events: list[Event] = [
        EntryClaimed(player="ada", entry="e1", at=NOON),
        ClaimMissed(player="ada", order="m", at=NOON),
        EntryAssigned(player="ada", entry="", at=NOON),
        RosterSet(roster="r2", at=NOON),
    ]
    assert [read_event(write_event(event)) for event in events] == events


def test_until_the_first_round_the_host_may_choose_another_roster_and_claims_begin_anew() -> None:
    room = credited(ADAS, missed("m", "bo"))
    assert decide(room, SetRoster(roster="r1"), NOON) == ()
    other = ordered(room, SetRoster(roster="r2"))
    assert (other.plan.roster, other.claims, other.missed_claims) == ("r2", {}, {})
    assert ordered(other, SetRoster(roster="")).plan.roster == ""
    assert ordered(gathered(), SetRoster(roster="r1"), ADAS).claims == {"ada": "e1"}
    assert code_of(answering(), SetRoster(roster="r1")) == "wrong_phase"
    assert code_of(ordered(answering(), EndReview()), SetRoster(roster="r1")) == "wrong_phase"


ORDERS = st.lists(
    st.one_of(
        st.builds(
            ClaimEntry, player=st.sampled_from(["ada", "bo", "cem"]), entry=st.sampled_from(["e1", "e2"])
        ),
        st.builds(MissClaim, player=st.sampled_from(["ada", "bo"]), order=st.sampled_from("mnopqr")),
        st.builds(
            AssignEntry, player=st.sampled_from(["ada", "bo"]), entry=st.sampled_from(["", "e1", "e2"])
        ),
        st.builds(RemovePlayer, player=st.just("bo")),
        st.builds(ForgetPlayer, player=st.sampled_from(["ada", "bo"])),
    ),
    max_size=25,
)


@settings(max_examples=50, deadline=None)
@given(ORDERS)
def test_whatever_is_ordered_no_entry_has_two_seats_and_forgetting_leaves_no_trace(
    orders: list[Command],
) -> None:
    log: list[Event] = list(prepare("room-1", preparation(by=FOR_CREDIT), NOON))
    log += entering()
    room = gathered(by=FOR_CREDIT)
    for order in orders:
        try:
            events = decide(room, order, NOON)
        except Refused:
            continue
        for event in events:
            log = [*redacted(log, event), event] if isinstance(event, PlayerForgotten) else [*log, event]
        room = folded(room, events)
        assert replay(log) == room
        assert len(set(room.claims.values())) == len(room.claims)
        assert room.claims.keys() <= room.players.keys()
    for event in log:
        if isinstance(event, EntryClaimed | EntryAssigned) and not key_of(room, event.player):
            assert event.entry == ""


def key_of(room: Room, player: str) -> str:
    """The seat key's hash; of somebody who was sent out any, of a former player none."""
    known = room.players.get(player)
    return "gone" if known is None else known.key_hash


def entering() -> list[Event]:
    """The events by which Ada and Bo come in."""
    room = replay(prepare("room-1", preparation(by=FOR_CREDIT), NOON))
    assert room is not None
    found: list[Event] = []
    for order in (OpenDoor(door_code="CDFHJ"), seat("ada"), seat("bo")):
        events = decide(room, order, NOON)
        found += events
        room = folded(room, events)
    return found
