"""The grid that the desk asks for: what each cell yields, and an even share."""

from typing import Any

import pytest

from quizroom.pages.host_entry import COOKIE
from quizroom.questions.model import FAMILIES
from quizroom.service.blueprints import Blueprints
from tests.pages.web import Web, made
from tests.service.courses import COURSE, knowledge


@pytest.fixture(scope="module")
def web() -> Web:
    return made()


def grid(web: Web, asked: str = "") -> dict[str, Any]:
    answer = web.host().get(f"/desk/blueprint/{COURSE}{asked}")
    assert answer.status_code == 200
    found: dict[str, Any] = answer.get_json()
    return found


def test_the_grid_has_a_cell_for_each_region_and_family_of_the_list(web: Web) -> None:
    found = grid(web)
    assert [region["name"] for region in found["regions"]] == [
        "shoulder girdle",
        "shoulder",
        "arm",
        "forearm",
    ]
    examined = knowledge().courses[COURSE].families
    assert found["families"] == [family for family in FAMILIES if family in examined]
    assert [(cell["region"], cell["family"]) for cell in found["cells"]] == [
        (region["id"], family) for region in found["regions"] for family in found["families"]
    ]
    assert all(cell["most"] > 0 or cell["reason"] for cell in found["cells"])
    assert sum(cell["rounds"] for cell in found["cells"]) == 10


def test_rounds_are_shared_out_over_the_families_that_are_asked_for(web: Web) -> None:
    found = grid(web, "?rounds=5&family=action&family=look_alike&typed=0")
    rounds = dict.fromkeys(found["families"], 0)
    for cell in found["cells"]:
        rounds[cell["family"]] += cell["rounds"]
    assert rounds["prime_mover"] == 0
    assert sorted((rounds["action"], rounds["look_alike"])) == [2, 3]


@pytest.mark.parametrize("rounds,shared", [("-3", 0), ("9999", 60), ("many", 10)])
def test_a_number_that_makes_no_sense_is_made_to(web: Web, rounds: str, shared: int) -> None:
    assert sum(cell["rounds"] for cell in grid(web, f"?rounds={rounds}")["cells"]) == shared


def test_the_grid_is_for_the_host_alone_and_of_lists_that_are_there(web: Web) -> None:
    assert web.browser().get(f"/desk/blueprint/{COURSE}").status_code == 403
    stranger = web.browser()
    stranger.set_cookie(COOKIE, "made-up")
    assert stranger.get(f"/desk/blueprint/{COURSE}").status_code == 403
    assert web.host().get("/desk/blueprint/no_such_list").status_code == 404


def test_a_list_is_counted_once_and_rooms_are_served_meanwhile() -> None:
    breaths: list[None] = []
    blueprints = Blueprints(catalogue=knowledge(), breathe=lambda: breaths.append(None))
    first = blueprints.yields(COURSE, typed=True)
    assert len(breaths) >= sum(cell.most for cell in first.cells)
    breaths.clear()
    assert blueprints.yields(COURSE, typed=True) is first
    assert breaths == []
