"""Reviews as files over the web: handed to their host, looked at, taken once, and never half."""

from typing import Any

import orjson
import pytest
from jsonschema import Draft202012Validator

from quizroom.marking import marks_of_room
from quizroom.questions.model import Picture
from quizroom.room.commands import CloseRound, EndReview, EnterSeat, OpenRound, SubmitAnswer
from quizroom.room.state import Room
from quizroom.service import filed_items
from quizroom.views.desk import desk_view
from tests.exchange.uploads import drawing, file_of
from tests.pages.own_web import OwnWeb, own_web, sent
from tests.questions.own_samples import DRAWING, best
from tests.room.samples import NOON
from tests.service.courses import plan_of


@pytest.fixture
def web() -> OwnWeb:
    return own_web()


def review(web: OwnWeb, *, played: bool) -> Room:
    """A review with an own item in front; played: one player had it right."""
    host = web.host()
    shown = host.post("/desk/own/pictures", data=file_of(drawing(), "PNG"), content_type="image/png")
    name = shown.get_json()["name"]
    picture = Picture(name=name, alt=DRAWING.alt, width=1, height=1, credit=DRAWING.credit)
    item = host.post("/desk/own/items", json=sent(best(picture=picture))).get_json()["id"]
    rooms = web.reviews.rooms
    room = web.dealing.add(web.reviews.prepare(plan_of(2), host="owner", order="o1"), item, position=0)
    if not played:
        return room
    room = web.reviews.open_door(room)
    key = room.ahead[0].key
    for command in (
        EnterSeat(player="p", handle="Teal Talus", key_hash="a" * 64),
        OpenRound(round=1),
        SubmitAnswer(player="p", round=1, choice=key),
        CloseRound(round=1, by_host=True),
        EndReview(),
    ):
        room = rooms.handle(room.id, command)
    return room


def written(web: OwnWeb, room: Room, happened: int) -> bytes:
    answer = web.host().get(f"/desk/review-file/{room.id}?happened={happened}")
    assert answer.headers["Content-Disposition"].startswith('attachment; filename="quizroom-review-')
    body: bytes = answer.data
    return body


def posted(web: OwnWeb, path: str, body: bytes) -> Any:
    return web.host().post(path, data=body, content_type="application/json")


def test_a_prepared_review_goes_out_and_comes_back_as_one_of_its_own(web: OwnWeb) -> None:
    room = review(web, played=False)
    body = written(web, room, 0)
    seen = posted(web, "/desk/review-file/check", body).get_json()
    assert (seen["played"], seen["players"], len(seen["items"])) == (False, 0, 3)
    assert seen["items"][0] == {
        "stem": best().stem,
        "format": "one_best",
        "by_host": True,
        "has_picture": True,
    }
    taken = posted(web, "/desk/review-file?order=f1", body).get_json()["room"]
    again = posted(web, "/desk/review-file?order=f1", body).get_json()["room"]
    there = web.reviews.rooms.room(taken)
    assert (taken == again, taken != room.id, there.phase, there.host) == (True, True, "preparing", "owner")
    assert [item.id for item in there.ahead] == [item.id for item in room.ahead]
    picture = there.ahead[0].picture
    assert picture is not None
    assert picture != room.ahead[0].picture  # a name of its own
    assert web.host().get(f"/picture/{picture.name}").status_code == 200
    assert web.anybody().get(f"/picture/{picture.name}").status_code == 404


def test_a_played_review_comes_back_finished_and_is_only_looked_at(web: OwnWeb) -> None:
    room = review(web, played=True)
    taken = posted(web, "/desk/review-file?order=f1", written(web, room, 1)).get_json()["room"]
    there = web.reviews.rooms.room(taken)
    assert (there.phase, there.plan.imported, there.door_code) == ("finished", True, "")
    (player,) = there.players.values()
    assert (player.handle, player.key_hash, player.owner) == ("Teal Talus", "", "")
    assert marks_of_room(there).totals[player.id].marks == 1
    assert desk_view(there, marks_of_room(there), NOON).roster[0].handle == "Teal Talus"
    assert taken in web.reviews.log.rooms_of_host("owner")


def test_without_what_happened_a_played_review_is_laid_out_anew(web: OwnWeb) -> None:
    room = review(web, played=True)
    taken = posted(web, "/desk/review-file?order=f1", written(web, room, 0)).get_json()["room"]
    there = web.reviews.rooms.room(taken)
    assert (there.phase, len(there.ahead), there.plan.imported) == ("preparing", 3, False)


def test_a_faulty_file_leaves_nothing_behind(web: OwnWeb) -> None:
    room = review(web, played=False)
    file = orjson.loads(written(web, room, 0))
    file["items"][2]["key"] = ["Z"]
    body = orjson.dumps(file)
    pictures = web.pictures.store.count("owner")
    for path in ("/desk/review-file/check", "/desk/review-file?order=f1"):
        answer = posted(web, path, body)
        assert answer.status_code == 422
        assert [fault["path"] for fault in answer.get_json()["faults"]] == ["items.2.key"]
    assert web.reviews.log.rooms_of_host("owner") == (room.id,)
    assert web.pictures.store.count("owner") == pictures


def test_only_its_host_gets_the_file_and_only_hosts_hand_one_in(web: OwnWeb) -> None:
    room = review(web, played=False)
    assert web.anybody().get(f"/desk/review-file/{room.id}").status_code == 403
    assert web.anybody().post("/desk/review-file/check", json={}).status_code == 403
    assert web.host().get("/desk/review-file/nothing").status_code == 404
    assert web.host().post("/desk/review-file", json={}).status_code == 400
    form = web.host().post("/desk/review-file/check", data={"file": "x"})
    assert form.status_code == 415


def test_the_schema_is_published_and_the_server_keeps_to_it(web: OwnWeb) -> None:
    published = web.anybody().get("/review_file.schema.json")
    assert published.content_type == "application/schema+json"
    validator = Draft202012Validator(orjson.loads(published.data))
    room = review(web, played=True)
    for happened in (0, 1):
        file = orjson.loads(written(web, room, happened))
        assert list(validator.iter_errors(file)) == []


def test_what_a_host_wrote_goes_into_the_library_with_its_picture_if_wished_and_once(web: OwnWeb) -> None:
    body = written(web, review(web, played=True), 1)
    (mine,) = web.library.all("owner")
    assert posted(web, "/desk/review-file/check", body).get_json()["own_items"] == 0
    web.library.drop("owner", mine.id)
    assert posted(web, "/desk/review-file/check", body).get_json()["own_items"] == 1
    posted(web, "/desk/review-file?order=f1", body)
    assert web.library.all("owner") == ()
    taken, again = (
        posted(web, "/desk/review-file?order=f2&library=1", body).get_json()["room"] for _ in range(2)
    )
    assert taken == again
    posted(web, "/desk/review-file?order=f3&library=1", body)
    (kept,) = web.library.all("owner")
    assert (kept.own.stem, set(kept.own.options)) == (mine.own.stem, set(mine.own.options))
    assert (kept.own.why, kept.own.seconds, kept.own.muscles) == (mine.own.why, None, mine.own.muscles)
    shown = web.reviews.rooms.room(taken).rounds[0].item.picture
    assert shown is not None
    assert shown == kept.own.picture
    assert web.host().get(f"/picture/{shown.name}").status_code == 200


def test_a_full_library_takes_neither_items_nor_the_review(
    web: OwnWeb, monkeypatch: pytest.MonkeyPatch
) -> None:
    room = review(web, played=False)
    body = written(web, room, 0)
    web.library.drop("owner", web.library.all("owner")[0].id)
    monkeypatch.setattr(filed_items, "MOST_ITEMS", 0)
    answer = posted(web, "/desk/review-file?order=f1&library=1", body)
    assert (answer.status_code, "items are the most" in answer.get_json()["problem"]) == (409, True)
    assert web.reviews.log.rooms_of_host("owner") == (room.id,)
