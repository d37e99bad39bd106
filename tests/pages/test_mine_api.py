"""A player's own page asks, answers, practises and plans over HTTP."""

import pytest

from tests.pages.alone_web import MISSED, OTHER_KEY, Json, Page, answer_to, page

SETTINGS = {
    "course": "",
    "exam_date": "2031-12-02",
    "minutes_a_day": 10,
    "time_zone": "America/Chicago",
}
ORDER: Json = {
    "order": "first",
    "course": "intro_upper_limb",
    "families": [],
    "regions": [],
    "rounds": 5,
    "mode": "practice",
    "seconds": None,
    "typed": True,
    "spelling": "accept",
}


@pytest.fixture
def mine() -> Page:
    return page()


def test_the_missed_items_of_a_review_are_asked_again_with_their_solutions(mine: Page) -> None:
    today = mine.ask("GET", "today")
    assert [(one["room"], one["missed"], one["left"]) for one in today["missed_reviews"]] == [
        (mine.room, len(MISSED), len(MISSED))
    ]
    again = mine.ask("GET", f"second-look/{mine.room}")
    assert [look["face"]["round"] for look in again["looks"]] == [1, 2, 3]
    for look in again["looks"]:
        assert look["solution"]["why"]
        assert look["solution"]["records"]
        assert look["solution"]["cautions"]
        assert look["missed"]["chosen"]
        assert look["region"]


def test_answers_are_judged_once_and_come_back_on_a_day(mine: Page) -> None:
    looks = mine.ask("GET", f"second-look/{mine.room}")["looks"]
    sent = {"answers": [answer_to(look, mine.clock, right=place > 0) for place, look in enumerate(looks)]}
    first = mine.ask("POST", "looks", sent)
    assert [one["verdict"] for one in first["outcomes"]] == ["wrong", "right", "right"]
    assert all(one["due"] for one in first["outcomes"])
    assert mine.ask("POST", "looks", sent) == first
    assert mine.ask("GET", f"second-look/{mine.room}")["looks"] == []
    assert mine.ask("GET", "today")["missed_reviews"][0]["left"] == 0


def test_three_days_later_what_was_wrong_is_due(mine: Page) -> None:
    mine.ask("PUT", "settings", SETTINGS)
    looks = mine.ask("GET", f"second-look/{mine.room}")["looks"]
    answers = [answer_to(look, mine.clock, right=place > 0) for place, look in enumerate(looks)]
    mine.ask("POST", "looks", {"answers": answers})
    mine.clock.move(3 * 24 * 3600)
    today = mine.ask("GET", "today")
    assert len(today["looks"]) == 1
    assert today["looks"][0]["missed"]["stem"] == looks[0]["missed"]["stem"]
    assert today["minutes"] >= 1
    assert today["ahead"]
    assert today["exam_date"] == SETTINGS["exam_date"]


def test_the_forecast_lies_between_nothing_and_all_and_gains_by_the_plan(mine: Page) -> None:
    mine.ask("PUT", "settings", SETTINGS)
    mine.clock.move(5 * 24 * 3600)
    forecast = mine.ask("GET", "today")["forecast"]
    assert sum(one["facts"] for one in forecast) == len(MISSED)
    for one in forecast:
        assert 0 < one["now"] < one["exam"] < 1


def test_settings_are_kept_and_bad_ones_refused_with_what_to_do(mine: Page) -> None:
    assert mine.ask("PUT", "settings", SETTINGS) == SETTINGS
    assert mine.ask("GET", "today")["settings"] == SETTINGS
    for field, value, word in (
        ("time_zone", "Mars/Olympus", "Europe/Paris"),
        ("course", "no_such", "Choose another"),
        ("minutes_a_day", 0, "minutes_a_day"),
        ("exam_date", "soon", "exam_date"),
    ):
        refused = mine.ask("PUT", "settings", {**SETTINGS, field: value}, status=400)
        assert word in refused["problem"]
    assert mine.ask("GET", "today")["settings"] == SETTINGS


def test_practice_is_dealt_once_for_an_order_and_found_again(mine: Page) -> None:
    made = mine.ask("POST", "practice", ORDER)
    assert len(made["looks"]) == 5
    assert mine.ask("POST", "practice", ORDER) == made
    assert mine.ask("GET", f"practice/{made['id']}") == made
    assert mine.ask("GET", "practice/nothing", status=404)["problem"]


def test_practice_needs_no_review(mine: Page) -> None:
    other = Page(mine.browser, mine.clock, mine.room, mine.rooms, key=OTHER_KEY)
    made = other.ask("POST", "practice", ORDER)
    sent = {"answers": [answer_to(look, mine.clock, right=False) for look in made["looks"]]}
    assert {one["verdict"] for one in other.ask("POST", "looks", sent)["outcomes"]} == {"wrong"}
    assert len(other.ask("GET", "today")["forecast"]) >= 1
    assert mine.ask("GET", f"practice/{made['id']}", status=404)


def test_too_much_is_refused_with_a_sentence(mine: Page) -> None:
    refused = mine.ask("POST", "practice", {**ORDER, "rounds": 60, "families": ["compartment"]}, status=409)
    assert "Choose fewer" in refused["problem"]
    blank = {"look": "x", "choice": [], "typed": [], "took_ms": 1, "answered_at": 1}
    many = mine.ask("POST", "looks", {"answers": [blank] * 101}, status=400)
    assert "answers" in many["problem"]


@pytest.mark.parametrize("path", ["looks", "flags", "practice"])
def test_a_body_that_holds_the_null_character_is_refused(mine: Page, path: str) -> None:
    assert "null character" in mine.ask("POST", path, {"look": "a\0b"}, status=400)["problem"]


def test_a_look_that_is_not_there_is_answered_so_that_an_outbox_can_let_it_go(mine: Page) -> None:
    gone = {"look": "gone", "choice": ["A"], "typed": [], "took_ms": 5000, "answered_at": 1}
    outcome = mine.ask("POST", "looks", {"answers": [gone]})["outcomes"][0]
    assert outcome["verdict"] == "none"
    assert "not kept" in outcome["because"]


def test_without_a_key_nothing_is_told(mine: Page) -> None:
    for method, path in (("GET", "today"), ("GET", f"second-look/{mine.room}"), ("POST", "looks")):
        assert mine.browser.open(f"/mine/api/{path}", method=method).status_code == 401
    stranger = Page(mine.browser, mine.clock, mine.room, mine.rooms, key=OTHER_KEY)
    assert stranger.ask("GET", f"second-look/{mine.room}", status=404)["problem"]
    assert stranger.ask("GET", "today")["looks"] == []
