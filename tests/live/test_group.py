"""Study groups against a real server: bad lines, players who drop and come back, kill -9."""

from collections.abc import Iterator

import pytest

from quizroom.room.state import Room
from tests.live.bad_line import BadLine, Weather
from tests.live.group import Member, all_play, room_behind, wait_for_phase
from tests.serving import Server, StartServer

BAD = Weather(delay_s=0.4, loss=0.05)
NAMES = ("Ada", "Bo", "Cem")


@pytest.fixture
def bad_line(server: Server) -> Iterator[BadLine]:
    """400 ms each way; one frame in twenty is lost."""
    line = BadLine(server.port, BAD)
    yield line
    line.close()


def group_of(address: str, rounds: int = 3) -> tuple[str, list[Member]]:
    """A group that has come in, and its door code."""
    members = [Member(address, name) for name in NAMES]
    door = members[0].open_group(rounds=rounds)
    for member in members[1:]:
        member.come_in(door)
    return door, members


def assert_kept(room: Room, members: list[Member]) -> None:
    """Every answer that was confirmed is in the log, and nothing else."""
    seats = {player.handle: player.id for player in room.players.values()}
    for member in members:
        mine = seats[member.name]
        kept = {one.number: list(one.answers[mine].choice) for one in room.rounds if mine in one.answers}
        assert kept == member.acknowledged


def test_a_group_plays_a_whole_review_over_bad_lines(server: Server, bad_line: BadLine) -> None:
    door, members = group_of(bad_line.address, rounds=2)
    all_play(*members)
    room = room_behind(server, door)
    assert room.phase == "finished"
    assert [one.explained_at is not None for one in room.rounds] == [True] * 2
    assert_kept(room, members)
    assert all(len(member.acknowledged) == 2 for member in members)
    assert bad_line.counts.lost > 0
    for member in members:
        member.line.close()


def test_a_player_who_drops_is_not_waited_for_and_returns_without_loss(server: Server) -> None:
    door, members = group_of(server.address)
    ada, bo, cem = members
    all_play(*members, until_round=1)
    cem.answer()
    cem.line.close()
    all_play(ada, bo, until_round=2)
    ada.answer()
    bo.answer()
    wait_for_phase(ada, "explained")
    assert ada.seen["public"]["group"]["present"] == 2
    cem.look()
    assert cem.seen["own"]["of"] == 2
    wait_for_phase(cem, "explained")
    assert [one["verdict"] == "none" for one in cem.seen["own"]["rounds"]] == [False, True]
    all_play(*members)
    assert_kept(room_behind(server, door), members)
    for member in members:
        member.line.close()


def test_a_cut_of_all_lines_loses_nothing(server: Server) -> None:
    line = BadLine(server.port, Weather(delay_s=0.05))
    door, members = group_of(line.address)
    all_play(*members, until_round=1)
    members[0].answer()
    line.cut()
    all_play(*members)
    room = room_behind(server, door)
    assert room.phase == "finished"
    assert_kept(room, members)
    line.close()


@pytest.mark.parametrize("phase", ["answering", "explained"])
def test_a_group_goes_on_after_a_kill(phase: str, server: Server, start_server: StartServer) -> None:
    door, members = group_of(server.address)
    all_play(*members, until_round=1)
    for member in members if phase == "explained" else members[:2]:
        member.answer()
    wait_for_phase(members[0], phase)
    server.kill()
    again = start_server(server.data, port=server.port)
    all_play(*members)
    room = room_behind(again, door)
    assert room.phase == "finished"
    assert_kept(room, members)
    for member in members:
        member.line.close()


def test_after_a_kill_the_group_does_not_wait_for_one_who_stays_away(
    server: Server, start_server: StartServer
) -> None:
    door, (ada, bo, cem) = group_of(server.address)
    all_play(ada, bo, cem, until_round=1)
    server.kill()
    again = start_server(server.data, port=server.port)
    cem.line.close()
    all_play(ada, bo)
    room = room_behind(again, door)
    assert [one.answers.keys() for one in room.rounds] == [set(list(room.players)[:2])] * 3
    ada.line.close()
    bo.line.close()
