"""A player flags an item in a second look; the flag reaches the host of the review that asked it."""

from typing import Any

import pytest

from quizroom.marking import marks_of_room
from quizroom.views.changes_model import FlagsFace, FlagText
from quizroom.views.desk import desk_view
from tests.pages.alone_web import OTHER_KEY, Json, Page, answer_to, page

ORDER: Json = {
    "order": "first",
    "course": "intro_upper_limb",
    "families": [],
    "regions": [],
    "rounds": 5,
    "mode": "practice",
    "seconds": None,
    "typed": False,
    "spelling": "accept",
}
SAID = "My book says otherwise."


@pytest.fixture
def mine() -> Page:
    return page()


def second_look(mine: Page) -> list[Json]:
    looks: list[Json] = mine.ask("GET", f"second-look/{mine.room}")["looks"]
    return looks


def wish(look: Json, *, up: bool = True, text: str = "") -> Json:
    return {"look": look["id"], "up": up, "text": text}


def on_desk(mine: Page, round_: int) -> FlagsFace:
    room = mine.rooms.room(mine.room)
    return desk_view(room, marks_of_room(room), mine.clock.now()).items[round_ - 1].flags


def test_a_flag_gathers_at_the_round_whose_fact_was_asked_again_and_can_be_taken_back(mine: Page) -> None:
    look = second_look(mine)[0]
    place = look["flag"]["round"]
    assert (look["flag"]["up"], look["missed"]["title"]) == (False, look["flag"]["review"])
    mine.ask("POST", "flags", wish(look, text=SAID))
    seen = on_desk(mine, place)
    asked = "" if look["face"]["stem"] == look["missed"]["stem"] else look["face"]["stem"]
    assert seen == FlagsFace(up=1, waiting=1, texts=(FlagText(text=SAID, settled=False, asked=asked),))
    assert second_look(mine)[0]["flag"] == {**look["flag"], "up": True, "text": SAID}
    mine.ask("POST", "flags", wish(look, up=False))
    assert on_desk(mine, place).up == 0


def test_what_comes_back_by_plan_is_flagged_at_the_review_too(mine: Page) -> None:
    looks = second_look(mine)
    mine.ask("POST", "looks", {"answers": [answer_to(look, mine.clock, right=False) for look in looks]})
    mine.clock.move(3 * 24 * 3600)
    due = mine.ask("GET", "today")["looks"][0]
    mine.ask("POST", "flags", wish(due, text=SAID))
    assert on_desk(mine, due["flag"]["round"]).up == 1


def test_what_was_dealt_for_a_player_alone_has_no_host_and_says_whom_to_tell(mine: Page) -> None:
    dealt = mine.ask("POST", "practice", ORDER)["looks"][0]
    assert dealt["flag"] is None
    told = mine.ask("POST", "flags", wish(dealt), status=404)
    assert "Tell your teacher" in told["problem"]


@pytest.mark.parametrize(
    "changed,status,word",
    [
        ({"text": "x" * 201}, 409, "200 characters"),
        ({"look": "no such look"}, 404, "teacher"),
        ({"up": "yes"}, 400, "up"),
    ],
)
def test_what_does_not_fit_is_refused_with_what_to_do(
    mine: Page, changed: dict[str, Any], status: int, word: str
) -> None:
    told = mine.ask("POST", "flags", wish(second_look(mine)[0]) | changed, status=status)
    assert word in told["problem"]


def test_nobody_flags_with_the_look_of_another(mine: Page) -> None:
    look = second_look(mine)[0]
    stranger = Page(mine.browser, mine.clock, mine.room, mine.rooms, key=OTHER_KEY)
    stranger.ask("POST", "flags", wish(look), status=404)
    assert on_desk(mine, look["flag"]["round"]).up == 0
