"""What is kept of a player: told, handed out, and deleted, to whoever has the key."""

from dataclasses import dataclass

from flask import Blueprint, Response, jsonify
from werkzeug.wrappers import Response as AnyResponse

from quizroom.exchange.history_file import history_csv, history_json
from quizroom.pages.mine_entry import player_of_request, problem
from quizroom.pages.unkept import download
from quizroom.protocol.codec import write
from quizroom.protocol.me import Me
from quizroom.service.forgetting import Forgetting, Keeping
from quizroom.service.histories import Histories
from quizroom.service.players import Players
from quizroom.service.ports import Clock, NotStored
from quizroom.views.moment import milliseconds

NOT_DELETED = "The server could not delete it all; the rest stays under your key. Try again in a minute."


@dataclass(frozen=True, slots=True, kw_only=True)
class MyData:
    """What these pages are made from."""

    players: Players
    histories: Histories
    forgetting: Forgetting
    keeping: Keeping
    clock: Clock


def add_me(routes: Blueprint, mine: MyData) -> None:
    """Give the blueprint the addresses below /mine/api that tell, hand out and delete."""

    @routes.get("/mine/api/me")
    def me() -> AnyResponse:
        return jsonify(write(_me(mine, player_of_request())))

    @routes.delete("/mine/api/me")
    def forget() -> AnyResponse:
        player = player_of_request()
        try:
            mine.forgetting.forget_player(player)
            mine.forgetting.wipe_if_due()
        except NotStored:
            return problem(NOT_DELETED, 503)
        return jsonify(write(_me(mine, player)))

    @routes.get("/mine/api/export.json")
    def export_json() -> Response:
        history = mine.histories.of(player_of_request())
        return download(history_json(history, mine.clock.now()), "application/json", "quizroom-history.json")

    @routes.get("/mine/api/export.csv")
    def export_csv() -> Response:
        history = mine.histories.of(player_of_request())
        return download(history_csv(history), "text/csv; charset=utf-8", "quizroom-history.csv")


def _me(mine: MyData, player: str) -> Me:
    known = mine.players.store.known(player)
    return Me(
        known=known is not None,
        since=None if known is None else milliseconds(known.since),
        seen_at=None if known is None else milliseconds(known.seen_at),
        reviews=len(mine.players.seats_of(player)),
        keep_reviews_days=mine.keeping.reviews_days,
        keep_players_days=mine.keeping.players_days,
    )
