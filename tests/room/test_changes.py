"""Who changed what stays visible."""

from dataclasses import replace

from quizroom.marking import marks_of_room
from quizroom.room.bench_commands import DrawBenches, SeatAtBench, TakeBench
from quizroom.room.bench_state import BenchRules
from quizroom.room.change_commands import RekeyItem
from quizroom.room.change_noting import changes_of
from quizroom.room.changes import Change
from quizroom.room.commands import RemovePlayer, RestoreItem, RuleOnWords, StrikeItem
from quizroom.room.events import ItemStruck
from quizroom.room.state import Room
from quizroom.views.desk import desk_view
from tests.room.sample_items import one_best, typed
from tests.room.samples import CLOSE, NOON, after, answering, folded, ordered, plan

BY = "T. Bracken"


def told(room: Room) -> list[tuple[int, str, str, str]]:
    """Of each change on the desk its round, words, reason, and who made it."""
    rows = desk_view(room, marks_of_room(room), NOON).changes
    return [(row.round, row.text, row.reason, row.by) for row in rows]


def test_each_change_of_a_key_or_of_what_counts_is_told_with_who_and_when() -> None:
    room = ordered(
        answering(one_best()),
        StrikeItem(round=1, by=BY),
        RestoreItem(round=1, by="M. Sorrel"),
        RekeyItem(round=1, key=("A", "B"), reason="My book says so.", by=BY),
        RekeyItem(round=1, by=BY),
        at=after(7),
    )
    assert told(room) == [
        (1, "Struck: out of all marks", "", BY),
        (1, "Counts again", "", "M. Sorrel"),
        (1, "Keyed anew: A: radial nerve; B: axillary nerve", "My book says so.", BY),
        (1, "Keyed as dealt again: B: axillary nerve", "", BY),
    ]
    assert {one.at for one in changes_of(room)} == {after(7)}
    assert len(changes_of(room, 1)) == 4
    assert changes_of(room, 2) == ()


def test_rulings_on_words_are_told() -> None:
    room = ordered(answering(typed()), RuleOnWords(round=1, words="Nerve X", accept=True, by=BY), CLOSE)
    room = ordered(room, RuleOnWords(round=1, words="nerve x", accept=False, by=BY))
    assert [row[1] for row in told(room)] == ["Accepted: “nerve x”", "Refused: “nerve x”"]


def test_where_hosts_seat_players_is_told_without_their_names_and_what_players_choose_is_not() -> None:
    room = answering(one_best(), by=replace(plan(), benches=BenchRules(how="choice")))
    room = ordered(
        room, TakeBench(player="ada", bench="Carpal"), SeatAtBench(player="bo", bench="Tarsal", by=BY)
    )
    room = ordered(room, SeatAtBench(player="bo", bench="", by=BY), DrawBenches(seed=1, host=BY))
    assert told(ordered(room, RemovePlayer(player="bo", by=BY))) == [
        (0, "Seated a player at Tarsal", "", BY),
        (0, "Took a player from a bench", "", BY),
        (0, "Drew the benches anew", "", BY),
        (0, "Sent a player out", "", BY),
    ]


def test_logs_from_before_names_were_noted_tell_what_was_done() -> None:
    room = folded(answering(), [ItemStruck(round=1, at=NOON)])
    assert changes_of(room) == (Change(round=1, kind="struck", by="", at=NOON),)
