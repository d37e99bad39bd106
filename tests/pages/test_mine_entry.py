"""The key in the header, and nothing else, says whose request it is."""

import pytest
from flask import Flask, jsonify
from flask.testing import FlaskClient
from sqlalchemy import Engine

from quizroom.pages.mine_entry import player_of_request, welcome_of_request
from quizroom.service.players import Players, player_of
from quizroom.storage.database import open_database
from quizroom.storage.players import SqlPlayers
from tests.room.samples import NOON

KEY = "abcdefghijklmn27"


@pytest.fixture
def players() -> Players:
    return Players(store=SqlPlayers(open_in_memory()))


def open_in_memory() -> Engine:
    return open_database("sqlite://")


def browser_of(players: Players) -> FlaskClient:
    app = Flask("quizroom")
    app.get("/look", endpoint="look")(lambda: jsonify(player=player_of_request()))
    app.post("/write", endpoint="write")(lambda: jsonify(player=welcome_of_request(players, NOON)))
    return app.test_client()


def test_reading_with_an_unknown_key_writes_nothing(players: Players) -> None:
    read = browser_of(players).get("/look", headers={"Authorization": f"Bearer {KEY}"})
    assert read.json == {"player": player_of(KEY)}
    assert players.store.known(player_of(KEY)) is None


def test_the_first_write_makes_the_player(players: Players) -> None:
    wrote = browser_of(players).post("/write", headers={"Authorization": f"Bearer {KEY}"})
    assert wrote.json == {"player": player_of(KEY)}
    assert players.store.known(player_of(KEY)) is not None


@pytest.mark.parametrize("given", ["", "Bearer", "Bearer short", f"Basic {KEY}", f"Bearer {KEY.upper()}"])
def test_without_a_whole_key_the_answer_says_what_to_do(players: Players, given: str) -> None:
    for answer in (
        browser_of(players).get("/look", headers={"Authorization": given}),
        browser_of(players).post("/write", headers={"Authorization": given}),
    ):
        assert answer.status_code == 401
        assert answer.headers["WWW-Authenticate"] == "Bearer"
        assert answer.json is not None
        assert "private link" in answer.json["problem"]


def test_a_key_in_a_cookie_or_in_the_address_is_none(players: Players) -> None:
    browser = browser_of(players)
    browser.set_cookie("Authorization", f"Bearer {KEY}")
    assert browser.get(f"/look?key={KEY}").status_code == 401
