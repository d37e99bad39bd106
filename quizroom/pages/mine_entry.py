"""How a player gets to what is their own: the key in the Authorization header (RFC 6750), no cookie.

A browser sends such a header only where a script of this page says so; another site cannot.
"""

from datetime import datetime
from typing import NoReturn

from flask import Response, abort, jsonify, make_response, request

from quizroom.service.players import BadKey, Players, player_of

BEARER = "Bearer "
NO_KEY = (
    "This needs your own key. Open the private link that your browser keeps, or enter your recovery phrase."
)
BAD_KEY = "This is not a whole key: it has 16 letters and figures. Copy your private link once more."


def player_of_request() -> str:
    """The player whose key came with the request, known or not; nothing is written.

    Without a well-formed key the request ends here (401), in JSON that says what to do.
    """
    try:
        return player_of(_key())
    except BadKey:
        _refuse(BAD_KEY)


def welcome_of_request(players: Players, now: datetime) -> str:
    """The same for a request that writes: the player is made if there is none yet."""
    try:
        return players.welcome(_key(), now)
    except BadKey:
        _refuse(BAD_KEY)


def _key() -> str:
    given = request.headers.get("Authorization", "")
    if not given.startswith(BEARER):
        _refuse(NO_KEY)
    return given.removeprefix(BEARER).strip()


def problem(text: str, status: int) -> Response:
    """An answer that says what to do, as everything below /mine/api gives it."""
    return make_response(jsonify(problem=text), status)


def _refuse(text: str) -> NoReturn:
    answer = problem(text, 401)
    answer.headers["WWW-Authenticate"] = "Bearer"
    abort(answer)
