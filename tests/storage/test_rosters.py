"""Class rosters, in memory and in databases."""

from dataclasses import replace
from datetime import timedelta

import pytest
from sqlalchemy import Engine, func, inspect, select

from quizroom.room.commands import EndReview
from quizroom.room.credit_commands import SetRoster
from quizroom.service.ports import EventLog
from quizroom.service.roster_ports import Roster, RosterEntry, RosterRow, RosterStore
from quizroom.service.rosters import Rosters
from quizroom.storage.hosts import SqlHosts
from quizroom.storage.kept_reviews import SqlReviews
from quizroom.storage.roster_memory import MemoryRosters
from quizroom.storage.roster_tables import roster_entries, roster_reviews
from quizroom.storage.rosters import SqlRosters
from tests.room.samples import NOON, after, plan, preparation
from tests.service.fakes import Desk, SetClock

LAB = Roster(
    id="r1",
    host="owner",
    name="HHC-AN 140, Lab 1",
    created_at=NOON,
    changed_at=NOON,
    entries=(
        RosterEntry(entry="e1", row=RosterRow(id="00042", name="Ada Alder", section="Lab 1")),
        RosterEntry(entry="e2", row=RosterRow(id="HH000102", name="דנה אלון")),
    ),
)


@pytest.fixture
def store(database: Engine | None, log: EventLog) -> RosterStore:
    return MemoryRosters(log.rooms_of_roster) if database is None else SqlRosters(database)


def test_a_roster_comes_back_as_it_was_kept_in_its_order(store: RosterStore) -> None:
    store.keep(LAB)
    assert store.find("r1") == LAB
    assert store.find("r2") is None


def test_a_host_sees_their_own_rosters_by_name(store: RosterStore) -> None:
    for roster in (
        LAB,
        replace(LAB, id="r2", name="anatomy", entries=()),
        replace(LAB, id="r3", host="other", entries=()),
    ):
        store.keep(roster)
    assert [(line.id, line.name, line.people) for line in store.rosters_of("owner")] == [
        ("r2", "anatomy", 0),
        ("r1", "HHC-AN 140, Lab 1", 2),
    ]
    assert store.rosters_of("owner")[0].changed_at == NOON
    assert store.rosters_of("nobody") == ()


@pytest.mark.parametrize(
    "typed,entry",
    [
        ("00042", "e1"),
        (" hh 000 102 ", "e2"),
        ("\uff28\uff28000102", "e2"),
        ("42", None),
        ("", None),
        ("0004", None),
    ],
)
def test_somebody_is_found_by_their_id_however_it_is_typed_but_zeros_count(
    store: RosterStore, typed: str, entry: str | None
) -> None:
    store.keep(LAB)
    assert store.entry_of("r1", typed) == entry
    assert store.entry_of("r2", typed) is None


def test_a_roster_that_is_kept_again_takes_the_place_of_the_first(store: RosterStore) -> None:
    store.keep(LAB)
    store.keep(replace(LAB, name="Lab 2", entries=LAB.entries[1:]))
    assert store.entry_of("r1", "00042") is None
    assert [line.people for line in store.rosters_of("owner")] == [1]


def test_an_erased_roster_leaves_nothing(store: RosterStore, database: Engine | None) -> None:
    store.keep(LAB)
    store.erase("r1")
    store.erase("r1")
    assert store.find("r1") is None
    assert store.rosters_of("owner") == ()
    if database is not None:
        with database.connect() as connection:
            assert connection.execute(select(func.count()).select_from(roster_entries)).scalar() == 0


def test_a_roster_is_used_as_long_as_a_review_for_credit_by_it_is_kept(
    store: RosterStore, log: EventLog, database: Engine | None
) -> None:
    store.keep(LAB)
    desk = Desk(log)
    for room, roster in (("room-1", "r1"), ("room-2", ""), ("room-3", "r9")):
        desk.rooms.handle(room, preparation(by=replace(plan(), roster=roster)))
    desk.rooms.handle("room-2", SetRoster(roster="r1"))
    assert log.rooms_of_roster("r1") == ("room-1", "room-2")
    desk.rooms.handle("room-2", SetRoster(roster=""))
    desk.rooms.handle("room-1", EndReview())
    assert log.rooms_of_roster("r1") == ("room-1",)
    assert log.rooms_of_roster("") == log.rooms_of_roster("r2") == ()
    assert store.unused_since(after(60)) == ()
    store.keep(replace(LAB, id="r2", entries=()))
    assert store.unused_since(after(60)) == ("r2",)
    assert store.unused_since(NOON) == ()
    if database is not None:
        SqlReviews(database).erase_review("room-1")
        assert store.unused_since(after(60)) == ("r1", "r2")


def test_rosters_of_a_host_who_is_removed_go_to_their_heir(
    store: RosterStore, database: Engine | None
) -> None:
    if database is None:
        return
    store.keep(replace(LAB, host="leaving"))
    SqlHosts(database).remove("leaving", heir="owner")
    assert [line.id for line in store.rosters_of("owner")] == ["r1"]


def test_names_and_ids_stand_in_one_table_alone(open_here: object, database: Engine | None) -> None:
    if database is None:
        return
    columns = {
        (table, column["name"])
        for table in inspect(database).get_table_names()
        for column in inspect(database).get_columns(table)
        if column["name"] in ("institutional_id", "id_key", "section")
    }
    assert {table for table, _ in columns} == {"roster_entries"}
    assert "name" not in {column.name for column in roster_reviews.columns}


def test_whoever_stays_on_a_roster_keeps_the_opaque_id(store: RosterStore) -> None:
    ids, clock = (f"i{number}" for number in range(20)), SetClock()
    rosters = Rosters(store=store, clock=clock, new_id=lambda: next(ids))
    made = rosters.add("owner", "Lab 1", [RosterRow(id="HH1", name="Ada"), RosterRow(id="HH2", name="Bo")])
    clock.move(60)
    rows = [RosterRow(id="hh 2", name="Bo Birch", section="B"), RosterRow(id="HH3", name="Cem")]
    changed = rosters.change(made, "Lab 2", rows)
    assert changed.entries[0].entry == made.entries[1].entry
    assert changed.entries[1].entry not in {entry.entry for entry in made.entries}
    assert (changed.created_at, changed.changed_at) == (NOON, NOON + timedelta(seconds=60))
    assert rosters.own("owner", made.id) == changed
    assert rosters.own("other", made.id) is None
    assert rosters.own("", made.id) is rosters.own("owner", "") is None
