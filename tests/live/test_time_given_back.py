"""The clock goes on honestly after a kill."""

from quizroom.realtime.alarms import RECONNECT_MS
from tests.live.lesson import gathered
from tests.live.phases import answering
from tests.serving import Server, StartServer


def test_time_without_a_server_is_given_back_to_the_round(server: Server, start_server: StartServer) -> None:
    lesson = gathered(server, ["ada"], timing="fixed", seconds=5)
    lesson.open_next()
    clock = lesson.desk()["public"]["clock"]
    opened_at = clock["closes_at"] - 5000
    lesson.restart(start_server)
    view = lesson.desk()["public"]
    given = view["clock"]["closes_at"] - clock["closes_at"]
    away = view["now"] - opened_at
    assert RECONNECT_MS <= given <= away + RECONNECT_MS
    assert view["clock"]["limit_ms"] == 5000
    assert view["phase"] == "answering"
    lesson.answer("ada")
    lesson.hang_up()


def test_a_second_kill_gives_back_no_time_twice(server: Server, start_server: StartServer) -> None:
    lesson = answering(server)
    first = lesson.desk()["public"]["clock"]["closes_at"]
    begun = lesson.desk()["now"]
    lesson.restart(start_server)
    lesson.restart(start_server)
    view = lesson.desk()["public"]
    assert view["clock"]["closes_at"] - first <= view["now"] - begun + 2 * RECONNECT_MS + 1000
    lesson.hang_up()
