"""A class plays a review against a real server."""

from collections.abc import Iterator

import pytest

from tests.live.lesson import PLAYERS, Lesson, gathered, marks_by_handle
from tests.live.voices import Voice, host_voice
from tests.serving import Server


@pytest.fixture
def lesson(server: Server) -> Iterator[Lesson]:
    """A class in its seats."""
    lesson = gathered(server)
    yield lesson
    lesson.hang_up()


def test_a_round_goes_from_opening_to_its_record(lesson: Lesson) -> None:
    lesson.open_next()
    assert lesson.seats["ada"].last("public", lambda view: view["round"] == 1)["phase"] == "answering"
    lesson.answer("ada")
    lesson.answer("bo", wrong=True)
    assert lesson.wall is not None
    assert lesson.wall.last("tally", lambda tally: tally["answered"] == 2)["players"] == 3
    lesson.step("close_round")
    ada, bo, cem = (lesson.seats[player].last("own", lambda own: own["result"]) for player in PLAYERS)
    assert [own["result"]["verdict"] for own in (ada, bo, cem)] == ["right", "wrong", "none"]
    assert [own["place"] for own in (ada, bo, cem)] == [1, 2, 2]
    assert ada["result"]["reasons"] == []
    lesson.step("show_record")
    explained = lesson.wall.last("public", lambda view: view["phase"] == "explained")
    assert explained["records"]
    assert all(option["reason"] for option in explained["result"]["options"])
    own = lesson.seats["bo"].last("own", lambda own: own["result"] and own["result"]["reasons"])
    assert own["result"]["reasons"][0]["right"] is False


def test_a_whole_review_ends_with_the_marks_that_follow_from_its_log(lesson: Lesson) -> None:
    for number in range(1, 4):
        lesson.open_next()
        for place, player in enumerate(PLAYERS):
            lesson.answer(player, wrong=place >= number)
        lesson.step("close_round")
        lesson.step("show_record")
    lesson.step("end_review")
    roster = {row["handle"]: (row["marks"], row["of"]) for row in lesson.desk()["roster"]}
    assert roster == marks_by_handle(lesson.logged())
    assert roster == {"Ada": (3, 3), "Bo": (2, 3), "Cem": (1, 3)}


def test_an_item_that_is_struck_counts_for_nobody(lesson: Lesson) -> None:
    lesson.open_next()
    lesson.answer("ada")
    lesson.step("close_round")
    lesson.step("strike_item")
    own = lesson.seats["ada"].last("own", lambda own: own["result"] and own["result"]["verdict"] == "struck")
    assert (own["marks"], own["of"]) == (0, 0)


def test_who_comes_late_is_counted_from_the_open_round(lesson: Lesson) -> None:
    lesson.open_next()
    lesson.step("close_round")
    lesson.open_next()
    reply = lesson.enter("dele")
    assert (reply["own"]["from_round"], reply["public"]["round"]) == (2, 2)
    lesson.answer("dele")
    lesson.step("close_round")
    assert lesson.seats["dele"].last("own", lambda own: own["result"])["of"] == 1


def test_a_removed_player_learns_it_and_can_no_longer_answer(lesson: Lesson) -> None:
    lesson.open_next()
    player = next(row["player"] for row in lesson.desk()["roster"] if row["handle"] == "Bo")
    lesson.host.done("remove_player", player=player)
    assert lesson.seats["bo"].last("own", lambda own: own["removed"])["handle"] == ""
    assert lesson.seats["bo"].say("submit_answer", round=1, choice=["A"])["code"] == "no_such_player"


def test_a_round_closes_by_itself_when_its_time_and_the_grace_are_over(server: Server) -> None:
    lesson = gathered(server, ["ada"], timing="fixed", seconds=5, rounds=1)
    lesson.open_next()
    clock = lesson.seats["ada"].last("public", lambda view: view["clock"])["clock"]
    closed = lesson.seats["ada"].last("public", lambda view: view["phase"] == "closed")
    assert clock["limit_ms"] == 5000
    assert 750 <= closed["now"] - clock["closes_at"] < 3000
    lesson.hang_up()


def test_the_host_may_open_a_second_desk(lesson: Lesson) -> None:
    second: Voice = host_voice(lesson.server, lesson.cookie)
    second.done("open_desk", room=lesson.room)
    lesson.open_next()
    assert second.last("desk", lambda desk: desk["public"]["round"] == 1)["room"] == lesson.room
    second.hang_up()
