"""Pictures: kept for their host, shown to others only once their round was opened, and then safely."""

from threading import Thread
from time import sleep

import pytest

from quizroom.pages.running_apart import one_at_a_time
from quizroom.questions.model import Picture
from quizroom.questions.own import OwnItem
from quizroom.room.commands import CloseRound, OpenRound
from quizroom.room.state import Room
from tests.exchange.uploads import bomb, drawing, file_of
from tests.pages.own_web import OwnWeb, own_web, sent
from tests.questions.own_samples import DRAWING, best
from tests.service.courses import plan_of


@pytest.fixture
def web() -> OwnWeb:
    return own_web()


def test_pictures_are_drawn_one_after_the_other_since_each_takes_much_memory() -> None:
    at_work, most = [0], [0]

    def drawn(seconds: float) -> None:
        at_work[0] += 1
        most[0] = max(most[0], at_work[0])
        sleep(seconds)
        at_work[0] -= 1

    in_turn = one_at_a_time(lambda work, *given: work(*given))
    threads = [Thread(target=in_turn, args=(drawn, 0.02)) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert most == [1]


def uploaded(web: OwnWeb) -> str:
    answer = web.host().post("/desk/own/pictures", data=file_of(drawing(), "PNG"), content_type="image/png")
    assert (answer.get_json()["width"], answer.get_json()["height"]) == (320, 200)
    name: str = answer.get_json()["name"]
    assert answer.get_json()["address"] == f"/picture/{name}"
    return name


def with_picture(name: str) -> OwnItem:
    return best(picture=Picture(name=name, alt=DRAWING.alt, width=1, height=1, credit=DRAWING.credit))


def test_the_name_tells_nothing_and_cannot_be_guessed(web: OwnWeb) -> None:
    names = {uploaded(web) for _ in range(3)}
    assert len(names) == 3
    assert all(len(name) >= 43 for name in names)  # 256 bits, six to a letter


def test_the_item_tells_the_true_size(web: OwnWeb) -> None:
    name = uploaded(web)
    kept = web.host().post("/desk/own/items", json=sent(with_picture(name))).get_json()
    assert (kept["own"]["picture"]["width"], kept["findings"]) == (320, [])
    assert kept["preview"]["face"]["picture"]["address"] == f"/picture/{name}"


def test_others_see_it_once_its_round_is_open_and_not_before(web: OwnWeb) -> None:
    name = uploaded(web)
    item = web.host().post("/desk/own/items", json=sent(with_picture(name))).get_json()["id"]
    room = web.reviews.prepare(plan_of(2), host="owner", order="o1")
    room = web.dealing.add(room, item, position=1)
    room = web.reviews.open_door(room)
    seen = [web.anybody().get(f"/picture/{name}").status_code]
    for number in (1, 2):
        room = web.reviews.rooms.handle(room.id, OpenRound(round=number))
        seen.append(web.anybody().get(f"/picture/{name}").status_code)
        if number == 1:
            room = closed(web, room.id)
    assert seen == [404, 404, 200]
    assert web.host().get(f"/picture/{name}").status_code == 200


def closed(web: OwnWeb, room: str) -> Room:
    return web.reviews.rooms.handle(room, CloseRound(round=1, by_host=True))


def test_it_comes_with_headers_that_let_it_be_nothing_but_a_picture(web: OwnWeb) -> None:
    answer = web.host().get(f"/picture/{uploaded(web)}")
    assert answer.headers["Content-Type"] == "image/webp"
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    assert answer.headers["Content-Security-Policy"].startswith("default-src 'none'; sandbox")
    assert answer.headers["Cross-Origin-Resource-Policy"] == "same-origin"
    assert "private" in answer.headers["Cache-Control"]


@pytest.mark.parametrize(
    "body,kind,status",
    [
        (file_of(drawing(), "PNG"), "application/octet-stream", 415),
        (b"<svg/>", "image/png", 422),
        (bomb(), "image/png", 422),
        (b"\x89PNG" + b"\0" * 10_000_001, "image/png", 413),
    ],
    ids=["kind", "svg", "bomb", "huge"],
)
def test_what_is_no_fit_picture_is_refused(web: OwnWeb, body: bytes, kind: str, status: int) -> None:
    answer = web.host().post("/desk/own/pictures", data=body, content_type=kind)
    assert answer.status_code == status
    assert answer.get_json()["problem"]
    assert web.pictures.store.count("owner") == 0


def test_a_review_keeps_the_item_as_it_was_dealt(web: OwnWeb) -> None:
    host = web.host()
    item = host.post("/desk/own/items", json=sent(best(picture=None))).get_json()["id"]
    room = web.dealing.add(web.reviews.prepare(plan_of(2), host="owner", order="o1"), item, position=0)
    before = room.ahead[0]
    host.put(f"/desk/own/items/{item}", json=sent(best(picture=None, stem="Which band is it?")))
    host.delete(f"/desk/own/items/{item}")
    assert web.reviews.rooms.room(room.id).ahead[0] == before
    assert before.by_host
