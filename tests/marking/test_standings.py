"""Marks of a whole room: totals, standings, and marking anew."""

from dataclasses import replace

from hypothesis import given, settings

from quizroom.marking import marks_of_room, place_of, standings
from quizroom.room.commands import CloseRound, OpenRound, RemovePlayer, RestoreItem, RuleOnWords, StrikeItem
from quizroom.room.state import Room
from tests.room.histories import History, histories, played
from tests.room.sample_items import one_best, pick_three, typed
from tests.room.samples import answering, ordered, says, seat, writes

often = settings(max_examples=25, deadline=None)


def two_rounds() -> Room:
    """Ada has both right, Bo one of them, Cem comes for the second and has it right, Dele is silent."""
    room = answering(one_best("1"), pick_three("2"), one_best("3"), players=("bo", "ada", "dele"))
    room = ordered(room, says("ada", "B"), says("bo", "B"), CloseRound(round=1, by_host=True), seat("cem"))
    room = ordered(room, OpenRound(round=2), says("ada", "A", "C", "E", round_=2))
    room = ordered(room, says("bo", "B", round_=2), says("cem", "A", "C", "E", round_=2))
    return ordered(room, CloseRound(round=2, by_host=True))


def rows(room: Room) -> list[tuple[int, str, float, int]]:
    return [(row.place, row.handle, row.marks, row.of) for row in standings(room, marks_of_room(room))]


def test_standings_go_by_marks_and_equal_marks_share_a_place() -> None:
    assert rows(two_rounds()) == [(1, "Ada", 2, 2), (2, "Bo", 1, 2), (2, "Cem", 1, 1), (4, "Dele", 0, 2)]


def test_an_open_round_is_in_nobodys_marks() -> None:
    room = ordered(two_rounds(), OpenRound(round=3), says("dele", "B", round_=3))
    assert rows(room) == rows(two_rounds())


def test_striking_an_item_marks_everybody_anew_and_restoring_it_undoes_that() -> None:
    struck = ordered(two_rounds(), StrikeItem(round=2))
    assert rows(struck) == [(1, "Ada", 1, 1), (1, "Bo", 1, 1), (3, "Cem", 0, 0), (3, "Dele", 0, 1)]
    assert rows(ordered(struck, RestoreItem(round=2))) == rows(two_rounds())


def test_a_removed_player_is_in_no_standings_and_no_mean() -> None:
    room = ordered(two_rounds(), RemovePlayer(player="bo"))
    assert [handle for _, handle, _, _ in rows(room)] == ["Ada", "Cem", "Dele"]
    assert [sorted(each.marks) for each in marks_of_room(room).rounds] == [["ada"], ["ada", "cem"]]


def test_thirds_of_a_mark_add_up_to_a_shared_place() -> None:
    room = answering(pick_three("1"), pick_three("2"), one_best("3"), players=("ada", "bo"))
    room = ordered(room, says("ada", "A"), CloseRound(round=1, by_host=True), OpenRound(round=2))
    room = ordered(room, says("ada", "A", "C", round_=2), says("bo", "A", "C", "E", round_=2))
    assert rows(ordered(room, CloseRound(round=2, by_host=True))) == [(1, "Ada", 1, 2), (1, "Bo", 1, 2)]


@often
@given(histories())
def test_standings_are_total_stable_and_share_places(history: History) -> None:
    for step in played(history):
        marks = marks_of_room(step.room)
        table = standings(step.room, marks)
        assert {row.player for row in table} == set(step.room.players)
        assert [row.marks for row in table] == sorted((row.marks for row in table), reverse=True)
        assert table == standings(_seated_backwards(step.room), marks)
        for row in table:
            assert row.place == 1 + sum(other.marks > row.marks for other in table)
            assert row.place == place_of(row.player, marks)


@often
@given(histories())
def test_marks_kept_from_before_are_those_of_fresh_marking(history: History) -> None:
    known = None
    for step in played(history):
        known = marks_of_room(step.room, known)
        assert known == marks_of_room(step.room)


def test_a_ruling_marks_its_round_anew() -> None:
    room = ordered(answering(typed()), writes("ada", "nerve x"), CloseRound(round=1, by_host=True))
    known = marks_of_room(room)
    ruled = marks_of_room(ordered(room, RuleOnWords(round=1, words="nerve x", accept=True)), known)
    assert (known.totals["ada"].marks, ruled.totals["ada"].marks) == (0, 1)


def test_rounds_that_have_not_changed_are_not_marked_again() -> None:
    room = two_rounds()
    known = marks_of_room(room)
    for later in (ordered(room, StrikeItem(round=1)), ordered(room, OpenRound(round=3))):
        again = marks_of_room(later, known)
        assert again.rounds[0] is known.rounds[0]
        assert again.rounds[1] is known.rounds[1]


def _seated_backwards(room: Room) -> Room:
    return replace(room, players=dict(sorted(room.players.items(), reverse=True)))
