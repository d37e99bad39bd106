"""Another name for a bench takes its members and its marks along."""

import pytest

from quizroom.marking import bench_standings, marks_of_room
from quizroom.room.bench_commands import RenameBench, TakeBench
from quizroom.room.bench_state import BenchRules
from quizroom.room.benches import members, names
from quizroom.room.change_noting import changes_of
from quizroom.room.commands import CloseRound, EndReview
from quizroom.room.rules import decide
from quizroom.room.state import Room
from quizroom.room.station_commands import OpenStations
from tests.room.refusing import code_of
from tests.room.sample_items import one_best
from tests.room.samples import NOON, gathered, ordered, says
from tests.room.test_benches import bench_plan, playing, together


def rename(bench: str = "Carpals", name: str = " Metacarpals ") -> RenameBench:
    return RenameBench(bench=bench, name=name, by="M. Sorrel")


def handed_in() -> Room:
    """The first round is closed; Carpals handed in what is right."""
    room = ordered(playing(), says("ada", "B"), together("ada", "B"))
    return ordered(room, CloseRound(round=1, by_host=True))


def test_members_and_marks_go_along_and_the_change_is_noted() -> None:
    before = handed_in()
    room = ordered(before, rename())
    assert members(room, "Metacarpals") == ("ada", "bo")
    assert set(names(room)) == {"Metacarpals", "Tarsals"}
    had, has = (
        {row.bench: row.marks for row in bench_standings(marks_of_room(one))} for one in (before, room)
    )
    assert had == {"Carpals": 1.0, "Tarsals": 0.0}
    assert has == {"Metacarpals": 1.0, "Tarsals": 0.0}
    (change,) = changes_of(room)
    assert (change.kind, change.what, change.by) == ("bench_renamed", "Carpals → Metacarpals", "M. Sorrel")


def test_the_same_order_again_changes_nothing() -> None:
    assert decide(ordered(handed_in(), rename()), rename(), NOON) == ()
    assert decide(handed_in(), rename(name="Carpals"), NOON) == ()


def test_the_same_name_in_other_letters_is_taken() -> None:
    assert "CARPALS" in names(ordered(handed_in(), rename(name="CARPALS")))


@pytest.mark.parametrize(
    "room,command,code",
    [
        (handed_in(), rename("Phalanges"), "no_such_bench"),
        (handed_in(), rename(name="tarsals"), "bench_exists"),
        (handed_in(), rename(name=" "), "bad_bench"),
        (handed_in(), rename(name="x" * 25), "bad_bench"),
        (ordered(handed_in(), EndReview()), rename(), "finished"),
    ],
)
def test_what_would_mix_marks_up_or_is_no_name_is_refused(
    room: Room, command: RenameBench, code: str
) -> None:
    assert code_of(room, command) == code


def test_a_bench_that_handed_in_and_was_left_keeps_its_name_for_its_marks() -> None:
    room = ordered(handed_in(), *(TakeBench(player=one, bench="Tarsals") for one in ("ada", "bo")))
    assert code_of(room, rename("Tarsals", "Carpals")) == "bench_exists"


def test_at_stations_benches_keep_their_names() -> None:
    room = gathered(one_best(), one_best("2"), by=bench_plan(BenchRules(how="choice", stations=True)))
    walking = ordered(room, TakeBench(player="ada", bench="Carpals"), OpenStations(round=1))
    assert code_of(walking, rename()) == "at_stations"
