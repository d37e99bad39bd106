"""The library over the web: written, checked, mended, copied and dropped by its own host alone."""

from dataclasses import replace
from typing import Any

import pytest

from quizroom.protocol.own_codec import LARGEST_ITEM
from tests.pages.own_web import OwnWeb, own_web, sent
from tests.questions.own_samples import best, picked, typed

ITEM = sent(best(picture=None))


@pytest.fixture
def web() -> OwnWeb:
    return own_web()


def test_what_is_written_is_listed_and_comes_back(web: OwnWeb) -> None:
    host = web.host()
    written = host.post("/desk/own/items", json=ITEM).get_json()
    assert (written["own"], written["findings"]) == (ITEM, [])
    listed = host.get("/desk/own/items").get_json()
    assert [(one["id"], one["to_mend"], one["muscles"]) for one in listed["items"]] == [
        (written["id"], 0, ["extensor indicis"])
    ]
    assert host.get(f"/desk/own/items/{written['id']}").get_json() == written
    assert "own" not in listed["families"]
    assert {"id": "extensor_indicis", "name": "extensor indicis", "region": "forearm"} in listed["muscles"]


def test_the_preview_is_what_a_seat_would_see(web: OwnWeb) -> None:
    shown = web.host().post("/desk/own/check", json=sent(picked())).get_json()
    face, solution = shown["preview"]["face"], shown["preview"]["solution"]
    assert (face["stem"], face["pick"], len(face["options"])) == (picked().stem, 2, 5)
    assert len(solution["key"]) == 2
    assert all(option["reason"] for option in solution["options"])
    assert shown["id"] == ""


def test_an_unfinished_item_is_kept_and_says_what_to_mend(web: OwnWeb) -> None:
    host = web.host()
    draft = host.post("/desk/own/items", json=sent(typed(stem="", accepted=()))).get_json()
    assert {one["field"] for one in draft["findings"]} == {"stem", "accepted"}
    assert draft["preview"] is None
    mended = host.put(f"/desk/own/items/{draft['id']}", json=sent(typed())).get_json()
    assert (mended["id"], mended["findings"]) == (draft["id"], [])
    assert host.get("/desk/own/items").get_json()["items"][0]["to_mend"] == 0


def test_a_copy_is_an_item_of_its_own(web: OwnWeb) -> None:
    host = web.host()
    first = host.post("/desk/own/items", json=ITEM).get_json()["id"]
    second = host.post(f"/desk/own/items/{first}/copy", json={}).get_json()["id"]
    left = host.delete(f"/desk/own/items/{first}").get_json()["items"]
    assert [one["id"] for one in left] == [second]
    assert host.get(f"/desk/own/items/{first}").status_code == 404


@pytest.mark.parametrize(
    "method,path",
    [
        ("get", "/desk/own/items"),
        ("post", "/desk/own/items"),
        ("post", "/desk/own/check"),
        ("post", "/desk/own/pictures"),
        ("put", "/desk/own/items/x"),
        ("post", "/desk/own/items/x/copy"),
        ("delete", "/desk/own/items/x"),
    ],
)
def test_nobody_else_reads_or_writes_it(web: OwnWeb, method: str, path: str) -> None:
    answer = getattr(web.anybody(), method)(path, json=ITEM)
    assert answer.status_code == 403
    assert answer.get_json()["problem"].startswith("Only the host")


@pytest.mark.parametrize(
    "body,says",
    [
        ({**ITEM, "stem": 3}, "stem"),
        ({**ITEM, "script": "x"}, "script"),
        ({**ITEM, "format": "essay"}, "format"),
        ({**ITEM, "options": ITEM["options"] * 4}, "options: at most 10"),
        ({**ITEM, "muscles": ["m"] * 21}, "muscles: at most 20"),
        ([], "item"),
        ({**ITEM, "stem": "a\0b"}, "null character"),
    ],
)
def test_what_is_no_item_is_refused_by_its_field(web: OwnWeb, body: Any, says: str) -> None:
    answer = web.host().post("/desk/own/items", json=body)
    assert (answer.status_code, says in answer.get_json()["problem"]) == (400, True)


def test_too_much_text_and_other_kinds_of_bodies_are_refused(web: OwnWeb) -> None:
    host = web.host()
    long = host.post("/desk/own/items", json={**ITEM, "why": "x" * LARGEST_ITEM})
    assert long.status_code == 413
    form = host.post("/desk/own/items", data={"stem": "x"})  # what a form of another site could send
    assert form.status_code == 415
    assert host.post("/desk/own/items/x/copy").status_code == 415
    assert host.get("/desk/own/items").get_json()["items"] == []


def test_a_picture_that_is_not_the_hosts_own_is_not_taken_over(web: OwnWeb) -> None:
    kept = web.host().post("/desk/own/items", json=sent(replace(best())))
    assert kept.get_json()["own"]["picture"] is None
