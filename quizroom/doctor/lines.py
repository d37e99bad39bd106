"""Whether players' lines get through: websockets, and long polling where it is allowed."""

import json
from collections.abc import Iterator

import requests
import websocket

from quizroom.doctor.finding import Finding, fault, well
from quizroom.doctor.server import WAIT_S

ABOUT = "Lines"
QUERY = "EIO=4&transport"
"""Engine.IO protocol 4: the first packet that a server sends begins with 0, and 40 asks for the namespace."""
POLLS = 6
"""With two workers and no rule for the proxy, all of so many stay with one worker once in 64 times."""


def line_findings(players: str, *, polling: bool) -> Iterator[Finding]:
    """Open lines as a player's page does."""
    yield websocket_finding(players)
    if polling:
        yield polling_finding(players)


def websocket_finding(players: str) -> Finding:
    """Whether a browser's websocket gets through."""
    refusal = _websocket_refusal(players, origin=players)
    if not refusal:
        return well(ABOUT, "Websockets get through.")
    if _websocket_refusal(players, origin=""):
        return fault(
            ABOUT,
            f"No websocket gets through at {players}: {refusal}.",
            "Let the proxy speak HTTP/1.1 to the server and hand on the headers Upgrade and Connection.",
        )
    return fault(
        ABOUT,
        f"A websocket of a browser is refused at {players}: {refusal}.",
        "Let the proxy hand on the header Host as it came, and X-Forwarded-Proto: the server compares both"
        " with where the page came from.",
    )


def polling_finding(players: str) -> Finding:
    """Whether the requests of one player stay with one worker."""
    try:
        lost = sum(
            not _polls(f"{players}/socket.io/?{QUERY}=polling&room=TRIAL{number}") for number in range(POLLS)
        )
    except (requests.RequestException, ValueError, KeyError) as error:
        return fault(
            ABOUT,
            f"Long polling does not get through at {players} ({type(error).__name__}).",
            "Let the proxy pass GET and POST of /socket.io/, or set QUIZROOM_TRANSPORTS=websocket.",
        )
    if lost:
        return fault(
            ABOUT,
            f"Requests of one player reach several workers ({lost} of {POLLS} lines were lost).",
            "Let the proxy choose the worker by the query's room (nginx: hash $arg_room consistent), or set"
            " QUIZROOM_TRANSPORTS=websocket.",
        )
    return well(ABOUT, "Long polling gets through.")


def _websocket_refusal(players: str, *, origin: str) -> str:
    """Why none comes about; empty if one does."""
    address = f"ws{players.removeprefix('http')}/socket.io/?{QUERY}=websocket"
    try:
        line = websocket.create_connection(
            address, timeout=WAIT_S, origin=origin or None, suppress_origin=not origin
        )
    except (websocket.WebSocketException, OSError) as error:
        return str(error).partition(" -+-+- ")[0]
    try:
        first = line.recv()
    except (websocket.WebSocketException, OSError) as error:
        return str(error) or "nothing is said on it"
    finally:
        line.close()
    return "" if str(first).startswith("0{") else "what is said on it is not quizroom's"


def _polls(address: str) -> bool:
    """Whether a line that is opened in one request is known in the next."""
    opened = requests.get(address, timeout=WAIT_S)
    opened.raise_for_status()
    line = json.loads(opened.text[1:])["sid"]
    known = requests.post(f"{address}&sid={line}", data="40", timeout=WAIT_S).ok
    if known:
        requests.post(f"{address}&sid={line}", data="1", timeout=WAIT_S)
    return known
