"""Where no websocket comes through, long polling carries a review."""

from dataclasses import replace
from typing import Any

import pytest
import socketio

from tests.live.bad_line import Weather, line_to
from tests.live.lesson import gathered
from tests.live.voices import Voice
from tests.services import wait_until
from tests.serving import Server, StartServer


def test_where_websockets_are_blocked_long_polling_carries_a_review(server: Server) -> None:
    lesson = gathered(server, ["ada"], families=["nerve"])
    lesson.open_next()
    with line_to(server, Weather(blocks_websockets=True)) as line:
        with pytest.raises(socketio.exceptions.ConnectionError):
            Voice(replace(server, address=line.address))
        polling = socketio.Client(reconnection=False)
        heard: list[dict[str, Any]] = []
        polling.on("public", heard.append)
        polling.connect(line.address, wait_timeout=30)
        assert polling.transport() == "polling"
        seat = {
            "type": "enter_seat",
            "door_code": lesson.door,
            "handle": "Bo",
            "seat_key": "secret key of bo",
        }
        assert polling.call("say", {"id": "1", **seat})["result"] == "done"
        answer = {"id": "2", "type": "submit_answer", "round": 1, "choice": ["A"]}
        assert polling.call("say", answer)["result"] == "done"
        lesson.step("close_round")
        wait_until(lambda: any(view["phase"] == "closed" for view in heard), "the view of the closed round")
        assert line.counts.refused > 0
        polling.disconnect()
    lesson.hang_up()


def test_a_server_told_to_take_websockets_alone_refuses_long_polling(start_server: StartServer) -> None:
    server = start_server(settings={"QUIZROOM_TRANSPORTS": "websocket"})
    with pytest.raises(socketio.exceptions.ConnectionError):
        socketio.Client(reconnection=False).connect(server.address, transports=["polling"], wait_timeout=30)
    Voice(server).hang_up()
