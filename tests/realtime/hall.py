"""A whole server without sockets: everything real but the lines, the clock and the disk."""

from typing import Any

from quizroom.realtime.bench_replies import BenchReplies
from quizroom.realtime.broadcast import Broadcast
from quizroom.realtime.credit_replies import CreditReplies
from quizroom.realtime.desk_replies import DeskReplies
from quizroom.realtime.door import UNKNOWN_IDS, WRONG_DOORS, Guesses
from quizroom.realtime.gateway import Gateway
from quizroom.realtime.group_replies import GroupReplies
from quizroom.realtime.review_replies import ReviewReplies
from quizroom.realtime.seat_replies import SeatReplies
from quizroom.realtime.seats import Seats
from quizroom.room.state import Room
from quizroom.service.groups import GroupLimits, Groups
from quizroom.service.host_ports import Host
from quizroom.service.own_dealing import OwnDealing
from quizroom.service.own_items import OwnItems
from quizroom.service.review_list import ReviewList
from quizroom.service.reviews import Reviews
from quizroom.service.rooms import Rooms
from quizroom.service.rosters import Rosters
from quizroom.service.tries import OwnTries, Tries
from quizroom.storage.own_items import MemoryOwnItems
from quizroom.storage.pictures import MemoryPictures
from quizroom.storage.roster_memory import MemoryRosters
from quizroom.storage.shelf_memory import MemoryReviewShelf
from tests.protocol.wording import message
from tests.room.samples import preparation
from tests.service.courses import knowledge
from tests.service.fakes import SetClock, WatchedLog

HOST = "owner"


class FakeLines:
    """`realtime.lines.Lines` that remembers what it was told, and fails for one receiver on wish."""

    def __init__(self) -> None:
        """Begin silent."""
        self.sent: list[tuple[str, Any, str]] = []
        self.members: dict[str, set[str]] = {}
        self.broken_to = ""

    def emit(self, event: str, data: Any, *, to: str) -> None:
        """Remember what is sent to whom."""
        if to == self.broken_to:
            raise ConnectionError(to)
        self.sent.append((event, data, to))

    def enter_room(self, sid: str, room: str) -> None:
        """Remember who listens."""
        self.members.setdefault(room, set()).add(sid)

    def leave_room(self, sid: str, room: str) -> None:
        """The reverse."""
        self.members.get(room, set()).discard(sid)  # as the real one: who is not in may leave

    def taken(self) -> list[tuple[str, str]]:
        """What was sent to whom since the last look."""
        sent, self.sent = self.sent, []
        return [(event, to) for event, _, to in sent]


class Hall:
    """The gateway with everything behind it."""

    def __init__(
        self,
        log: WatchedLog | None = None,
        telling: type[Broadcast] = Broadcast,
        tries: Tries | None = None,
    ) -> None:
        """Serve from this log, or a fresh one; `telling` is what tells of changes, `tries` counts guesses."""
        self.log, self.tries = log or WatchedLog(), tries or OwnTries()
        self.clock, self.lines, self.seats = SetClock(), FakeLines(), Seats()
        self.steady_s = 0.0
        self.ids = (f"p{number}" for number in range(1, 1000))
        self.seeds = iter(range(1000))
        self.broadcast = telling(seats=self.seats, clock=self.clock, emit=self._emit)
        self.rooms = Rooms(log=self.log, clock=self.clock, on_change=self.broadcast.note)
        self.rosters = Rosters(
            store=MemoryRosters(self.log.rooms_of_roster), clock=self.clock, new_id=lambda: next(self.ids)
        )
        self.library = OwnItems(
            catalogue=knowledge(),
            store=MemoryOwnItems(),
            pictures=MemoryPictures(),
            clock=self.clock,
            new_id=lambda: next(self.ids),
        )
        self.hosts: dict[str, Host | None] = {}
        self.gateway = self._gateway()

    def _gateway(self) -> Gateway:
        shared: dict[str, Any] = {
            "rooms": self.rooms,
            "seats": self.seats,
            "lines": self.lines,
            "broadcast": self.broadcast,
            "clock": self.clock,
        }
        reviews = Reviews(
            catalogue=knowledge(), rooms=self.rooms, log=self.log, new_seed=lambda: next(self.seeds)
        )
        seat_replies = SeatReplies(
            log=self.log,
            new_id=lambda: next(self.ids),
            guesses=Guesses(limit=WRONG_DOORS, tries=self.tries),
            reads_rudely=lambda handle: "rude" in handle.lower(),
            **shared,
        )
        groups = Groups(
            reviews=reviews,
            rooms=self.rooms,
            log=self.log,
            limits=GroupLimits(on=True, size=4, most=2, hours=3),
            new_id=lambda: next(self.ids),
        )
        return Gateway(
            seats=self.seats,
            seat_replies=seat_replies,
            bench_replies=BenchReplies(seat_replies=seat_replies),
            credit_replies=self._credit_replies(seat_replies),
            review_replies=ReviewReplies(review_list=self._review_list(reviews), rooms=self.rooms),
            group_replies=GroupReplies(
                groups=groups,
                seat_replies=seat_replies,
                clock=self.clock,
                new_seed=lambda: next(self.seeds),
            ),
            desk_replies=DeskReplies(
                reviews=reviews,
                rosters=self.rosters,
                own_dealing=OwnDealing(reviews=reviews, own_items=self.library),
                new_seed=lambda: next(self.seeds),
                capacity=30,
                **shared,
            ),
            clock=self.clock,
            session_of=lambda cookie: cookie.removeprefix("host="),
            host_of=self.host_of,
            steady=lambda: self.steady_s,
        )

    def _review_list(self, reviews: Reviews) -> ReviewList:
        self.shelf = MemoryReviewShelf(self.log)
        self.review_list = ReviewList(shelf=self.shelf, reviews=reviews, erase=self._erase, clock=self.clock)
        return self.review_list

    def _erase(self, room: str) -> None:
        self.rooms.forget(room)
        self.log.erase(room)

    def _credit_replies(self, seat_replies: SeatReplies) -> CreditReplies:
        guesses = Guesses(limit=UNKNOWN_IDS, tries=self.tries)
        return CreditReplies(seat_replies=seat_replies, rosters=self.rosters.store, guesses=guesses)

    def host_of(self, session: str) -> Host | None:
        """Whose session it is: a host is an owner unless the test says otherwise."""
        owner = Host(id=session, name=session.title(), role="owner")
        return self.hosts.get(session, owner) if session else None

    def _emit(self, event: str, data: Any, *, to: str) -> None:
        self.lines.emit(event, data, to=to)

    def connect(self, sid: str, host: str = "") -> None:
        """A browser connects, with a host's cookie or none."""
        self.gateway.connect(sid, {"HTTP_COOKIE": f"host={host}"} if host else {})

    def say(self, sid: str, kind: str, **fields: Any) -> dict[str, Any]:
        """A good message of this type, but for the fields given, and the reply."""
        reply: dict[str, Any] = self.gateway.say(sid, message(kind, **fields))
        return reply

    def room(self) -> Room:
        """The room of these tests."""
        return self.rooms.room("room-1")

    def tell(self, *, with_tallies: bool = False) -> list[tuple[str, str]]:
        """Let what is due be told; what was sent to whom."""
        self.lines.taken()
        self.broadcast.run_once(with_tallies=with_tallies)
        return self.lines.taken()


def hall_with(*players: str, round_open: bool = True) -> Hall:
    """A hall with a desk (connection `host`), a wall (`wall`), and players on connections of their names."""
    hall = Hall()
    hall.rooms.handle("room-1", preparation(host=HOST))
    hall.connect("host", HOST)
    hall.say("host", "open_desk", room="room-1")
    hall.say("host", "open_door")
    hall.connect("wall")
    hall.say("wall", "watch_wall", door_code=hall.room().door_code)
    for player in players:
        enter(hall, player)
    if round_open:
        hall.say("host", "open_round", round=1)
    hall.tell(with_tallies=True)
    return hall


def enter(hall: Hall, name: str) -> dict[str, Any]:
    """A new connection of this name takes a seat with this handle."""
    hall.connect(name)
    door = hall.room().door_code
    return hall.say(name, "enter_seat", door_code=door, handle=name.title(), seat_key=f"key of {name}")
