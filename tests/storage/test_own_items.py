"""The library and its pictures, in memory and in databases, under one contract."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import timedelta

import pytest
from sqlalchemy import Engine

from quizroom.questions.own import OwnItem
from quizroom.room.adding import ItemAdded
from quizroom.room.events import ReviewPrepared
from quizroom.service.own_ports import KeptItem, KeptPicture, OwnItemStore, PictureStore
from quizroom.service.ports import Entry, EventLog
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.kept_reviews import SqlReviews
from quizroom.storage.own_items import MemoryOwnItems, SqlOwnItems
from quizroom.storage.pictures import MemoryPictures, SqlPictures
from tests.questions.own_samples import DRAWING, best, picked, typed
from tests.room.sample_items import one_best
from tests.room.samples import NOON, plan

SORRELS = KeptItem(id="i1", host="sorrel", changed_at=NOON, own=best())
SHOWN = KeptPicture(
    name=DRAWING.name, host="sorrel", made_at=NOON, width=640, height=400, body=b"RIFF\x00\xff"
)


@dataclass(frozen=True)
class Stores:
    """The two stores of one database."""

    items: OwnItemStore
    pictures: PictureStore


@pytest.fixture
def stores(database: Engine | None, log: EventLog) -> Stores:
    if database is not None:
        return Stores(SqlOwnItems(database), SqlPictures(database))
    items = MemoryOwnItems()

    def in_use(name: str) -> bool:
        return name in items.pictures() or bool(log.rooms_with_picture(name))

    return Stores(items, MemoryPictures(in_use))


@pytest.mark.parametrize("own", [best(), picked(), typed(), best(taken=("stem_is_short",), seconds=60)])
def test_an_item_comes_back_as_it_was_saved_to_its_own_host_alone(stores: Stores, own: OwnItem) -> None:
    kept = replace(SORRELS, own=own)
    stores.items.keep(kept)
    assert stores.items.find("sorrel", "i1") == kept
    assert stores.items.find("bracken", "i1") is None
    assert stores.items.of_host("bracken") == ()


def test_saving_anew_replaces_and_moves_to_the_top(stores: Stores) -> None:
    stores.items.keep(SORRELS)
    stores.items.keep(replace(SORRELS, id="i2", changed_at=NOON + timedelta(hours=1)))
    assert [one.id for one in stores.items.of_host("sorrel")] == ["i2", "i1"]
    mended = replace(SORRELS, own=typed(), changed_at=NOON + timedelta(hours=2))
    stores.items.keep(mended)
    assert [one.id for one in stores.items.of_host("sorrel")] == ["i1", "i2"]
    assert stores.items.find("sorrel", "i1") == mended


def test_only_its_host_takes_an_item_out(stores: Stores) -> None:
    stores.items.keep(SORRELS)
    stores.items.drop("bracken", "i1")
    assert stores.items.find("sorrel", "i1") is not None
    stores.items.drop("sorrel", "i1")
    assert stores.items.find("sorrel", "i1") is None


def test_a_picture_comes_back_byte_for_byte(stores: Stores) -> None:
    stores.pictures.keep(SHOWN)
    assert stores.pictures.find(SHOWN.name) == SHOWN
    assert stores.pictures.find("another") is None
    assert (stores.pictures.count("sorrel"), stores.pictures.count("bracken")) == (1, 0)


def test_only_pictures_that_are_nowhere_and_old_are_swept(stores: Stores, log: EventLog) -> None:
    for name in ("library", "swapped-in", "prepared", "nowhere"):
        stores.pictures.keep(replace(SHOWN, name=name))
    stores.items.keep(replace(SORRELS, own=best(picture=replace(DRAWING, name="library"))))
    log.append(review("room-1", "prepared", "swapped-in"))
    assert stores.pictures.sweep(NOON) == 0  # too young
    assert stores.pictures.sweep(NOON + timedelta(days=1)) == 1
    found = {name for name in ("library", "swapped-in", "prepared", "nowhere") if stores.pictures.find(name)}
    assert found == {"library", "swapped-in", "prepared"}


def test_the_log_tells_in_which_reviews_a_picture_is(log: EventLog) -> None:
    log.append(review("room-1", "a", "b"))
    log.append(review("room-2", "b", "c"))
    assert log.rooms_with_picture("b") == ("room-1", "room-2")
    assert log.rooms_with_picture("c") == ("room-2",)
    assert log.rooms_with_picture("d") == ()


def test_a_review_that_is_erased_lets_its_pictures_go(open_here: Callable[[], Engine]) -> None:
    engine = open_here()
    pictures = SqlPictures(engine)
    pictures.keep(replace(SHOWN, name="a"))
    SqlEventLog(engine).append(review("room-1", "a", "a"))
    assert pictures.sweep(NOON + timedelta(days=1)) == 0
    SqlReviews(engine).erase_review("room-1")
    assert pictures.sweep(NOON + timedelta(days=1)) == 1


def review(room: str, prepared: str, added: str) -> tuple[Entry, ...]:
    items = tuple(replace(one_best(name), picture=replace(DRAWING, name=name)) for name in (prepared, added))
    first = ReviewPrepared(room=room, host="sorrel", plan=plan(), items=items[:1], at=NOON)
    return (
        Entry(room=room, version=1, event=first),
        Entry(room=room, version=2, event=ItemAdded(position=0, item=items[1])),
    )
