"""What is kept of a player is told, handed out and deleted with one request each, to the key alone."""

import csv
import io
from dataclasses import replace
from typing import Any

import orjson
import pytest
from flask.testing import FlaskClient

from quizroom.room.change_commands import FlagItem
from quizroom.room.commands import (
    CloseRound,
    EnterSeat,
    HoldResults,
    OpenDoor,
    OpenRound,
    ShowResult,
    StrikeItem,
    SubmitAnswer,
)
from quizroom.room.talk_commands import CloseAgain, LetTalk, OpenAgain
from quizroom.room.time_commands import TakeTime
from quizroom.service.players import player_of
from tests.pages.web import Web, made
from tests.room.sample_items import matching, one_best, typed
from tests.room.samples import plan, preparation, says, writes

KEY, OTHER = "abcdefghijklmn27", "27abcdefghijklmn"


def played(*, handle: str = "Teal Talus", words: str = "axilary nerve") -> Web:
    """A site on which one player with a key chose, typed, and sees a third round still open."""
    web = made()
    web.rooms.handle("room-1", preparation(one_best(), typed(), matching()))
    steps: list[Any] = [
        OpenDoor(door_code="CDFHJ"),
        EnterSeat(player="p1", handle=handle, key_hash="k", owner=player_of(KEY)),
        EnterSeat(player="p2", handle="Bo", key_hash="k2", owner=player_of(OTHER)),
        OpenRound(round=1),
        says("p1", "B"),
        CloseRound(round=1, by_host=True),
        OpenRound(round=2),
        writes("p1", words, round_=2),
        CloseRound(round=2, by_host=True),
        OpenRound(round=3),
    ]
    for step in steps:
        web.rooms.handle("room-1", step)
    return web


def ask(browser: FlaskClient, path: str, *, key: str = KEY, method: str = "GET") -> Any:
    return browser.open(f"/mine/api/{path}", method=method, headers={"Authorization": f"Bearer {key}"})


def exported(web: Web, key: str = KEY) -> Any:
    return orjson.loads(ask(web.browser(), "export.json", key=key).data)


def rows(web: Web) -> list[dict[str, str]]:
    text = ask(web.browser(), "export.csv").data.decode("utf-8-sig")
    return list(csv.DictReader(io.StringIO(text, newline="")))


def test_a_player_sees_whether_and_how_long_anything_is_kept() -> None:
    known = ask(played().browser(), "me").json
    assert known["known"] is True
    assert (known["reviews"], known["keep_reviews_days"], known["keep_players_days"]) == (1, 400, 0)
    unknown = ask(made().browser(), "me").json
    assert (unknown["known"], unknown["since"], unknown["reviews"]) == (False, None, 0)


@pytest.mark.parametrize("path,method", [("me", "GET"), ("me", "DELETE"), ("export.json", "GET")])
def test_without_a_key_nothing_is_told_or_deleted(path: str, method: str) -> None:
    answer = played().browser().open(f"/mine/api/{path}", method=method)
    assert answer.status_code == 401
    assert answer.json is not None
    assert "key" in answer.json["problem"]


def test_everything_is_handed_out_as_json_with_marks_as_they_now_stand() -> None:
    web = played()
    (review,) = exported(web)["reviews"]
    assert (review["title"], review["handle"], review["of"]) == ("Shoulder and arm", "Teal Talus", 2)
    first, second = review["rounds"]
    assert (first["verdict"], first["mark"], first["answer"]) == ("right", 1.0, first["key"])
    assert second["answer"] == ["axilary nerve"]
    web.rooms.handle("room-1", StrikeItem(round=1))
    assert exported(web)["reviews"][0]["rounds"][0]["verdict"] == "struck"


def test_no_key_of_an_open_round_is_handed_out() -> None:
    web = played()
    assert len(exported(web)["reviews"][0]["rounds"]) == 2
    assert [row["round"] for row in rows(web)] == ["1", "2"]


def test_what_a_player_left_in_an_open_or_held_round_is_handed_out_without_its_key() -> None:
    web = made()
    by = replace(plan(), holds_results=True, players_take_time=True)
    web.rooms.handle("room-1", preparation(one_best(), one_best("2"), one_best("3"), one_best("4"), by=by))
    steps: list[Any] = [
        OpenDoor(door_code="CDFHJ"),
        EnterSeat(player="p1", handle="Teal Talus", key_hash="k", owner=player_of(KEY)),
        EnterSeat(player="p2", handle="Bo", key_hash="k2", owner=player_of(OTHER)),
        OpenRound(round=1),
        says("p1", "A"),
        CloseRound(round=1, by_host=True),
        ShowResult(round=1),
        OpenRound(round=2),
        says("p1", "B", round_=2),
        CloseRound(round=2, by_host=True),
        OpenRound(round=3),
        TakeTime(player="p1", round=3, time=1),
        FlagItem(player="p1", round=3, text="Two of these look right."),
    ]
    for step in steps:
        web.rooms.handle("room-1", step)
    (review,) = exported(web)["reviews"]
    assert [one["round"] for one in review["rounds"]] == [1]
    held, untold = review["untold"]
    assert (held["round"], held["answer"], held["key"], held["mark"]) == (2, ["axillary nerve"], [], None)
    assert (untold["flag_words"], untold["took_time"]) == ("Two of these look right.", 1)
    assert (untold["key"], untold["verdict"], untold["mark"]) == ([], None, None)
    *_, last = rows(web)
    columns = ("round", "key", "verdict", "mark", "flagged", "took_time", "time_factor")
    assert [last[one] for one in columns] == ["3", "", "not told yet", "", "yes", "1", "1"]
    assert exported(web, OTHER)["reviews"][0]["untold"] == []


def test_what_others_answered_is_handed_out_to_nobody_else() -> None:
    web = played()
    assert exported(web, OTHER)["reviews"][0]["handle"] == "Bo"
    assert "Teal Talus" not in str(exported(web, OTHER))
    assert exported(web, "a" * 16)["reviews"] == []


def test_answers_are_handed_out_as_a_table_in_which_blank_is_not_0() -> None:
    first, second = rows(played())
    assert (first["course"], first["mark"], first["verdict"]) == (
        "HHC-KN 232 Muscles and Movement",
        "1",
        "right",
    )
    assert second["answer"] == "axilary nerve"
    web = played(words="rectus abdominis")
    web.rooms.handle("room-1", StrikeItem(round=1))
    assert [row["mark"] for row in rows(web)] == ["", "0"]


def test_flags_and_second_answers_are_handed_out_as_json_and_as_a_table() -> None:
    web = made()
    web.rooms.handle("room-1", preparation(one_best(), one_best("2")))
    steps: list[Any] = [
        OpenDoor(door_code="CDFHJ"),
        EnterSeat(player="p1", handle="Teal Talus", key_hash="k", owner=player_of(KEY)),
        HoldResults(on=True),
        OpenRound(round=1),
        says("p1", "A"),
        CloseRound(round=1, by_host=True),
        LetTalk(round=1),
        OpenAgain(round=1, by_host=True),
        SubmitAnswer(player="p1", round=1, choice=("B",), typed=(), again=True),
        CloseAgain(round=1, by_host=True),
        ShowResult(round=1),
        FlagItem(player="p1", round=1, text="=Is it not the radial nerve?"),
        OpenRound(round=2),
        CloseRound(round=2, by_host=True),
        ShowResult(round=2),
    ]
    for step in steps:
        web.rooms.handle("room-1", step)
    first, second = exported(web)["reviews"][0]["rounds"]
    assert (first["verdict"], first["second_verdict"], first["second"]) == ("wrong", "right", first["key"])
    assert (first["flagged"], first["flag_words"]) == (True, "=Is it not the radial nerve?")
    assert (second["flagged"], second["second_verdict"]) == (False, None)
    columns = ("second_answer", "second_verdict", "flagged", "flag_words")
    assert [tuple(row[one] for one in columns) for row in rows(web)] == [
        (first["key"][0], "right", "yes", "'=Is it not the radial nerve?"),
        ("", "", "", ""),
    ]


def test_the_table_ends_lines_as_rfc_4180_says_and_no_cell_is_a_formula() -> None:
    web = played(handle="=1+1 Talus", words="@sum of all nerves")
    data = ask(web.browser(), "export.csv").data
    assert data.startswith(b"\xef\xbb\xbf")
    assert data.count(b"\n") == data.count(b"\r\n") == 3
    assert {row["handle"] for row in rows(web)} == {"'=1+1 Talus"}
    assert rows(web)[1]["answer"] == "'@sum of all nerves"


def test_one_request_deletes_everything_of_one_player_and_nothing_of_others() -> None:
    web = played()
    assert ask(web.browser(), "me", method="DELETE").json["known"] is False
    assert exported(web)["reviews"] == []
    assert web.rooms.room("room-1").players["p1"].handle == "Former player 1"
    assert exported(web, OTHER)["reviews"][0]["handle"] == "Bo"


def test_the_page_on_privacy_says_what_holds_on_this_server() -> None:
    page = made(contact="Dr. M. Sorrel, <sorrel@hamatehill.example>").browser().get("/privacy").text
    assert "400 days after its end" in page
    assert "until it is deleted" in page
    assert "&lt;sorrel@hamatehill.example&gt;" in page
    assert "<table>" in page
    assert "<h1>What is stored" in page


def test_the_front_page_and_the_desk_say_how_long_reviews_are_kept() -> None:
    sentence = "This server erases a review 400 days after its end."
    assert sentence in made().browser().get("/").text
    assert sentence in made().host().get("/desk").text
