"""The pages over accounts in memory, with a manifest as the web build writes it."""

from dataclasses import dataclass
from typing import Any

from flask import Flask
from flask.testing import FlaskClient

from quizroom.pages.grading import Books
from quizroom.pages.groups import group_settings
from quizroom.pages.health import Health
from quizroom.pages.host_entry import HostEntry
from quizroom.pages.host_forms import HostForms
from quizroom.pages.me import MyData
from quizroom.pages.privacy import Privacy
from quizroom.pages.site import Site, add_pages
from quizroom.protocol.desk_settings import CourseLine, DeskSettings
from quizroom.questions.model import FAMILIES
from quizroom.service.blueprints import Blueprints
from quizroom.service.forgetting import Forgetting, Keeping
from quizroom.service.gradebooks import Gradebooks
from quizroom.service.groups import GroupLimits
from quizroom.service.histories import Histories
from quizroom.service.hosts import Hosts
from quizroom.service.players import Players
from quizroom.service.reports import Reports
from quizroom.service.rooms import Rooms
from quizroom.service.rosters import Rosters
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.host_memory import MemoryHosts
from quizroom.storage.kept_reviews import SqlReviews
from quizroom.storage.memory import MemoryAccounts
from quizroom.storage.players import SqlPlayers
from quizroom.storage.rosters import SqlRosters
from quizroom.storage.wiping import SqlWiping
from tests.service.courses import knowledge
from tests.service.fakes import QuickPasswords, SetClock

PAGES = ("front", "grading", "group", "seat", "wall", "desk", "items", "records", "report", "mine")
MANIFEST: dict[str, dict[str, Any]] = {
    "_shared.js": {"file": "assets/shared.js", "css": ["assets/shared.css"], "imports": ["_base.js"]},
    "_base.js": {"file": "assets/base.js", "assets": ["assets/serif.woff2"]},
    "src/mine/worker.ts": {"file": "assets/worker.js"},
    **{
        f"src/{page}.tsx": {
            "file": f"assets/{page}.js",
            "css": [f"assets/{page}.css", "assets/shared.css"],
            "imports": ["_shared.js", "_base.js"],
        }
        for page in PAGES
    },
}
METRICS = b"quizroom_rooms 0.0\n"
JOIN = "http://192.0.2.7:8000"
SETTINGS = DeskSettings(
    courses=(CourseLine(id="c", title="C", description="", muscles=3, families=("nerve",)),),
    families=FAMILIES,
    join_address=JOIN,
)


@dataclass(frozen=True, slots=True)
class Web:
    """The app with what is behind it."""

    app: Flask
    entry: HostEntry
    accounts: MemoryAccounts
    hosts: Hosts
    clock: SetClock
    rooms: Rooms
    mine: MyData
    books: Books

    @property
    def passwords(self) -> QuickPasswords:
        """What hashes, and counts its work."""
        assert isinstance(self.hosts.passwords, QuickPasswords)
        return self.hosts.passwords

    def browser(self) -> FlaskClient:
        """A browser of somebody."""
        return self.app.test_client()

    def host(self) -> FlaskClient:
        """The host's browser, with its cookie."""
        browser = self.app.test_client()
        assert browser.get(f"/desk/enter/{self.entry.new_key()}").status_code == 303
        return browser


def made(
    *,
    secure: bool = False,
    faults: tuple[str, ...] = (),
    remarks: tuple[str, ...] = (),
    metrics: bool = False,
    groups: bool = True,
    contact: str = "",
) -> Web:
    """A fresh site."""
    accounts, clock = MemoryAccounts(), SetClock()
    entry, hosts = host_parts(accounts, clock)
    app = Flask("quizroom")
    log, rooms, mine = own_data(clock)
    site = Site(
        books=books_over(rooms, mine),
        manifest=MANIFEST,
        catalogue=knowledge(),
        host_forms=HostForms(
            entry=entry,
            hosts=hosts,
            rooms=rooms,
            log=log,
            manifest=MANIFEST,
            address=JOIN,
            secure=secure,
        ),
        desk_settings=SETTINGS,
        blueprints=Blueprints(catalogue=knowledge()),
        reports=Reports(rooms=rooms, log=mine.histories.log),
        group_settings=group_settings(knowledge(), GroupLimits(on=groups, size=12, most=50, hours=4)),
        my_data=mine,
        privacy=Privacy(keeping=mine.keeping, contact=contact),
        secure=secure,
        health=Health(
            faults=lambda: faults, remarks=lambda: remarks, metrics=(lambda: METRICS) if metrics else None
        ),
    )
    add_pages(app, site)
    return Web(app, entry, accounts, hosts, clock, rooms, mine, site.books)


def books_over(rooms: Rooms, mine: MyData) -> Books:
    """Rosters and gradebooks in the database in which the rooms are."""
    ids = (f"id-{number}" for number in range(1000))
    rosters = Rosters(store=mine.forgetting.rosters, clock=mine.clock, new_id=lambda: next(ids))
    return Books(
        rosters=rosters,
        gradebooks=Gradebooks(log=mine.histories.log),
        rooms=rooms,
        forget_roster=mine.forgetting.forget_roster,
    )


def host_parts(accounts: MemoryAccounts, clock: SetClock) -> tuple[HostEntry, Hosts]:
    """How hosts come in, with secrets that are counted."""
    secrets, store = iter(range(1000)), MemoryHosts()

    def new_secret() -> str:
        return f"secret-{next(secrets)}"

    return (
        HostEntry(accounts=accounts, hosts=store, clock=clock, new_secret=new_secret),
        Hosts(
            store=store,
            accounts=accounts,
            passwords=QuickPasswords(),
            clock=clock,
            new_secret=new_secret,
            new_id=lambda: f"host-{next(secrets)}",
        ),
    )


def own_data(clock: SetClock) -> tuple[SqlEventLog, Rooms, MyData]:
    """What is kept of players, in a database in memory, and the rooms in which they sit."""
    engine = open_database("sqlite://")
    log, players = SqlEventLog(engine), SqlPlayers(engine)
    rooms = Rooms(log=log, clock=clock, on_change=lambda _: None)
    forgetting = Forgetting(
        players=players,
        reviews=SqlReviews(engine),
        rosters=SqlRosters(engine),
        rooms=rooms,
        wiping=SqlWiping(engine),
    )
    mine = MyData(
        players=Players(store=players),
        histories=Histories(players=players, log=log, rosters=forgetting.rosters),
        forgetting=forgetting,
        keeping=Keeping(reviews_days=400, players_days=0),
        clock=clock,
    )
    return log, rooms, mine
