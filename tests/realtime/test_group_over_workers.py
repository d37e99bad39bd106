"""A study group whose players sit at two workers."""

from quizroom.realtime.presence import AWAY_AFTER_S
from quizroom.room.group_commands import ReturnToSeat
from quizroom.room.group_events import PlayerLeft, PlayerReturned
from tests.realtime.test_groups import Evening, away


def test_a_player_who_comes_back_by_another_worker_is_missed_once_and_then_left_alone() -> None:
    evening = Evening()
    evening.wait(0)
    evening.hall.gateway.disconnect("bo")
    assert away(evening.wait(AWAY_AFTER_S + 0.1)) == ["Bo"]
    room = evening.room()
    bo = next(player.id for player in room.players.values() if player.handle == "Bo")
    # the worker at which Bo now sits says so
    evening.hall.rooms.handle(room.id, ReturnToSeat(player=bo))
    for _ in range(3):
        assert away(evening.wait(AWAY_AFTER_S)) == []
    told = [type(event) for event in evening.hall.log.read(room.id)]
    assert (told.count(PlayerLeft), told.count(PlayerReturned)) == (1, 1)
