"""The requests of own items over a database in memory, with rooms behind them."""

from dataclasses import dataclass
from typing import Any

from flask import Flask
from flask.testing import FlaskClient

from quizroom.pages.host_entry import HostEntry
from quizroom.pages.own_parts import library_over, own_item_requests, pictures_over
from quizroom.pages.safety import with_safety_headers
from quizroom.protocol.own_codec import write_own
from quizroom.protocol.own_items import OwnItemFace
from quizroom.questions.own import OwnItem
from quizroom.service.own_dealing import OwnDealing
from quizroom.service.own_items import OwnItems
from quizroom.service.pictures import Pictures
from quizroom.service.reviews import Reviews
from quizroom.service.rooms import Rooms
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.host_memory import MemoryHosts
from quizroom.storage.memory import MemoryAccounts
from tests.service.courses import knowledge
from tests.service.fakes import SetClock


@dataclass(frozen=True)
class OwnWeb:
    """The app with what is behind it; the host is "owner"."""

    app: Flask
    entry: HostEntry
    library: OwnItems
    pictures: Pictures
    reviews: Reviews
    dealing: OwnDealing
    clock: SetClock

    def host(self) -> FlaskClient:
        """The host's browser."""
        browser = self.app.test_client()
        token = self.entry.spend(self.entry.new_key())
        assert token is not None
        browser.set_cookie("quizroom_host", token)
        return browser

    def anybody(self) -> FlaskClient:
        """A browser of somebody else."""
        return self.app.test_client()


def own_web() -> OwnWeb:
    """A fresh one."""
    engine, clock, secrets = open_database("sqlite://"), SetClock(), iter(range(1000))
    log = SqlEventLog(engine)
    rooms = Rooms(log=log, clock=clock, on_change=lambda _: None)
    library = library_over(engine, knowledge(), clock)
    pictures = pictures_over(engine, rooms=rooms, log=log, clock=clock)
    entry = HostEntry(
        accounts=MemoryAccounts(),
        hosts=MemoryHosts(),
        clock=clock,
        new_secret=lambda: f"secret-{next(secrets)}",
    )
    app = Flask("quizroom")
    app.register_blueprint(
        own_item_requests(
            library, pictures, capacity=30, entry=entry, run_apart=lambda call, *given: call(*given)
        )
    )
    app.after_request(with_safety_headers)
    reviews = Reviews(catalogue=knowledge(), rooms=rooms, log=log, new_seed=lambda: next(secrets))
    dealing = OwnDealing(reviews=reviews, own_items=library)
    return OwnWeb(app, entry, library, pictures, reviews, dealing, clock)


def sent(own: OwnItem) -> Any:
    """An item as the page sends it."""
    return write_own(OwnItemFace(id="", own=own, findings=(), preview=None))["own"]
