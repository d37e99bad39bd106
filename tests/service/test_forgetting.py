"""Who is forgotten leaves no trace, and what was kept long enough goes by itself."""

import logging
from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import Engine

from quizroom.room.commands import CloseRound, EndReview, EnterSeat, OpenDoor, OpenRound, RenamePlayer
from quizroom.room.owner_commands import LinkSeat
from quizroom.room.state import Room
from quizroom.service.forgetting import Due, Forgetting, Keeping, erase_what_is_due
from quizroom.service.players import player_of
from quizroom.service.rooms import Rooms
from quizroom.service.roster_ports import Roster, RosterEntry, RosterRow
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.kept_reviews import SqlReviews
from quizroom.storage.players import SqlPlayers
from quizroom.storage.rosters import SqlRosters
from quizroom.storage.wiping import SqlWiping
from tests.room.sample_items import one_best, typed
from tests.room.samples import NOON, plan, preparation, says, writes
from tests.service.fakes import SetClock
from tests.storage.databases import url_in

KEY = "abcdefghijklmn27"
ME = player_of(KEY)
HANDLE, OTHER_HANDLE = "Quartz Lunate", "Zinc Calcaneus"
SEAT_KEY_HASH = "5e" * 32
WORDS = "my lab partner is xylophone"
TRACES = (HANDLE, OTHER_HANDLE, KEY, ME, SEAT_KEY_HASH, WORDS)


class World:
    """Rooms over a database file, with a clock that is set."""

    def __init__(self, folder: Path) -> None:
        """Serve from a fresh file."""
        self.folder = folder
        self.engine: Engine = open_database(url_in(folder))
        self.clock = SetClock()
        self.log = SqlEventLog(self.engine)
        self.rooms = Rooms(log=self.log, clock=self.clock, on_change=lambda _: None)
        self.players = SqlPlayers(self.engine)
        self.forgetting = Forgetting(
            players=self.players,
            reviews=SqlReviews(self.engine),
            rosters=SqlRosters(self.engine),
            rooms=self.rooms,
            wiping=SqlWiping(self.engine),
        )

    def played(self, room: str = "room-1", *, ended: bool = True) -> Room:
        """A review in which Quartz chose and typed, was renamed, and another player sat beside."""
        state = self.rooms.handle(room, preparation(one_best(), typed()))
        me = EnterSeat(player="p1", handle=HANDLE, key_hash=SEAT_KEY_HASH, owner=ME)
        other = EnterSeat(player="p2", handle="Teal Talus", key_hash="c" * 64, owner="d" * 64)
        steps: list[Any] = [
            OpenDoor(door_code=f"CDFHJ{room}"[:12]),
            *(me, other, RenamePlayer(player="p1", handle=OTHER_HANDLE), OpenRound(round=1)),
            *(says("p1", "B"), says("p2", "A"), CloseRound(round=1, by_host=True), OpenRound(round=2)),
            writes("p1", WORDS, round_=2),
            *([EndReview()] if ended else []),
        ]
        for step in steps:
            state = self.rooms.handle(room, step)
        return state

    def bytes(self) -> bytes:
        """Everything that lies in the data folder."""
        return b"".join(path.read_bytes() for path in sorted(self.folder.iterdir()) if path.is_file())


@pytest.fixture
def world(tmp_path: Path) -> Iterator[World]:
    made = World(tmp_path)
    yield made
    made.engine.dispose()


def test_before_there_is_something_to_be_found(world: World) -> None:
    world.played()
    kept = world.bytes()
    assert [trace for trace in TRACES if trace.encode() not in kept] == [KEY]


def test_nothing_of_a_forgotten_player_is_left_in_any_file_of_the_data_folder(world: World) -> None:
    for room in ("room-1", "room-2", "room-3"):
        world.played(room)
    world.forgetting.forget_player(ME)
    assert world.forgetting.wipe_if_due()
    kept = world.bytes()
    assert [trace for trace in TRACES if trace.encode() in kept] == []
    assert b"Teal Talus" in kept
    assert world.players.known(ME) is None
    assert world.players.known("d" * 64) is not None


def test_memory_follows_and_marks_stay_as_nobodys(world: World) -> None:
    before = world.played()
    world.forgetting.forget_player(ME)
    after = world.rooms.room("room-1")
    assert after.players["p1"].handle == "Former player 1"
    assert after.rounds[0].answers == before.rounds[0].answers
    assert not any(trace in repr(after) for trace in TRACES)


def test_a_live_review_goes_on_and_its_files_are_wiped_once_no_round_is_open(world: World) -> None:
    world.played(ended=False)
    world.forgetting.forget_player(ME)
    assert not world.forgetting.wipe_if_due()
    world.rooms.handle("room-1", EndReview())
    assert world.forgetting.wipe_if_due()
    assert [trace for trace in TRACES if trace.encode() in world.bytes()] == []


def test_a_server_that_starts_again_knows_nothing_either(world: World) -> None:
    world.played()
    world.forgetting.forget_player(ME)
    fresh = Rooms(log=world.log, clock=world.clock, on_change=lambda _: None)
    assert fresh.room("room-1") == world.rooms.room("room-1")


def test_forgetting_twice_or_somebody_unknown_does_no_harm(world: World) -> None:
    world.played()
    world.forgetting.forget_player(ME)
    state = world.rooms.room("room-1")
    world.forgetting.forget_player(ME)
    world.forgetting.forget_player("e" * 64)
    assert world.rooms.room("room-1") == state


def test_what_a_seat_held_before_it_changed_hands_is_forgotten_with_it(world: World) -> None:
    world.played()
    world.rooms.handle("room-1", LinkSeat(player="p1", owner="f" * 64))
    world.forgetting.forget_player("f" * 64)
    world.forgetting.forget_player(ME)
    world.forgetting.wipe_if_due()
    assert [trace for trace in (*TRACES, "f" * 64) if trace.encode() in world.bytes()] == []


def test_the_log_of_the_server_names_nobody(world: World, caplog: pytest.LogCaptureFixture) -> None:
    with caplog.at_level(logging.DEBUG):
        world.played()
        world.forgetting.forget_player(ME)
        world.forgetting.wipe_if_due()
    assert [trace for trace in TRACES if trace in caplog.text] == []


def test_reviews_and_players_are_due_when_their_days_are_over(world: World) -> None:
    keeping = Keeping(reviews_days=10, players_days=20)
    world.played("old")
    world.played("open", ended=False)
    assert world.forgetting.due(keeping, NOON + timedelta(days=9)) == Due(reviews=(), players=())
    assert world.forgetting.due(keeping, NOON + timedelta(days=11)).reviews == ("old", "open")
    assert world.forgetting.due(keeping, NOON + timedelta(days=11)).players == ()
    assert world.forgetting.due(keeping, NOON + timedelta(days=21)).players == (ME, "d" * 64)
    for_ever = Keeping(reviews_days=0, players_days=0)
    assert world.forgetting.due(for_ever, NOON + timedelta(days=9999)) == Due(reviews=(), players=())


def test_a_review_laid_out_but_never_opened_is_a_plan_and_stays(world: World) -> None:
    world.rooms.handle("plan", preparation())
    due = world.forgetting.due(Keeping(reviews_days=1, players_days=1), NOON + timedelta(days=999))
    assert due.reviews == ()


def test_the_server_erases_by_itself_and_the_rest_stays(world: World) -> None:
    world.played("old")
    world.clock.move(8 * 86_400)
    world.played("new")
    world.clock.move(3 * 86_400)
    erase_what_is_due(world.forgetting, Keeping(reviews_days=10, players_days=0), world.clock)
    assert world.log.read("old") == ()
    assert world.rooms.find("old") is None
    assert world.rooms.room("new").phase == "finished"
    assert [seat.room for seat in world.players.seats_of(ME)] == ["new"]


def test_a_roster_goes_with_the_last_review_by_it_and_leaves_no_name_in_the_file(world: World) -> None:
    row = RosterEntry(entry="e1", row=RosterRow(id="HH900900", name="Xylophone Yarrow", section="Lab 9"))
    for roster in ("used", "unused"):
        at = world.clock.now()
        kept = Roster(id=roster, host="owner", name="AN", created_at=at, changed_at=at, entries=(row,))
        world.forgetting.rosters.keep(replace(kept, entries=(replace(row, entry=roster),)))
    world.rooms.handle("room-1", preparation(by=replace(plan(), roster="used")))
    world.rooms.handle("room-1", EndReview())
    keeping = Keeping(reviews_days=30, players_days=0)
    assert world.forgetting.due(keeping, world.clock.now()).rosters == ()
    world.clock.move(31 * 86_400)
    due = world.forgetting.due(keeping, world.clock.now())
    assert (due.reviews, due.rosters) == (("room-1",), ("unused",))
    world.forgetting.carry_out(due)
    assert world.forgetting.due(keeping, world.clock.now()).rosters == ("used",)
    world.forgetting.carry_out(world.forgetting.due(keeping, world.clock.now()))
    assert world.forgetting.wipe_if_due()
    assert b"Xylophone" not in world.bytes()
    assert b"HH900900" not in world.bytes()


def test_a_store_that_fails_is_logged_and_the_server_goes_on(
    world: World, caplog: pytest.LogCaptureFixture
) -> None:
    world.played()
    broken = Forgetting(
        players=world.players,
        reviews=SqlReviews(nowhere()),
        rosters=SqlRosters(nowhere()),
        rooms=world.rooms,
        wiping=SqlWiping(nowhere()),
    )
    erase_what_is_due(broken, Keeping(reviews_days=1, players_days=1), world.clock)
    assert "could not be erased" in caplog.text


def nowhere() -> Engine:
    """A database whose tables are gone."""
    from sqlalchemy import create_engine  # noqa: PLC0415 - only here

    return create_engine("sqlite://")
