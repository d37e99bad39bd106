"""A class in a running review: one host, one wall, some players."""

from collections.abc import Iterable
from dataclasses import dataclass, field
from typing import Any

from quizroom.marking import marks_of_room
from quizroom.room.state import Room
from tests.live.voices import Voice, host_cookie, host_voice, logged_room
from tests.serving import Server, StartServer

PLAYERS = ("ada", "bo", "cem")
COURSE = "arm_and_forearm"


@dataclass
class Lesson:
    """Everybody in the room, and how to find them again after the server was killed."""

    server: Server
    cookie: str
    host: Voice
    room: str
    seen: dict[str, Any]
    door: str = ""
    wall: Voice | None = None
    seats: dict[str, Voice] = field(default_factory=dict)
    said: dict[tuple[str, int], dict[str, Any]] = field(default_factory=dict)
    """The answer of each player and round that was acknowledged last."""

    def step(self, kind: str, **fields: Any) -> dict[str, Any]:
        """The host does something about the current round, and looks at the desk."""
        reply = self.host.done(kind, **({"round": self.round} | fields))
        self.desk()
        return reply

    @property
    def round(self) -> int:
        """Number of the current round, as last seen on the desk."""
        number: int = self.seen["public"]["round"]
        return number

    def desk(self) -> dict[str, Any]:
        """The desk as it is now."""
        self.seen = self.host.done("show_view")["desk"]
        return self.seen

    def item(self) -> dict[str, Any]:
        """The current round's item, with everything that the host may know."""
        item: dict[str, Any] = self.seen["items"][self.round - 1]
        return item

    def enter(self, player: str) -> dict[str, Any]:
        """A player takes a seat by a new connection, or comes back to it."""
        self.seats[player] = Voice(self.server)
        return self.seats[player].done(
            "enter_seat", door_code=self.door, handle=player.title(), seat_key=f"secret key of {player}"
        )

    def answer(self, player: str, *, wrong: bool = False) -> dict[str, Any]:
        """A player answers the open round, right unless told otherwise."""
        said = _answer_to(self.item(), wrong=wrong)
        reply = self.seats[player].done("submit_answer", round=self.round, **said)
        self.said[player, self.round] = {"choice": [], "typed": [], **said}
        return reply

    def open_next(self) -> None:
        """The host opens the next round."""
        self.step("open_round", round=self.round + 1)

    def logged(self) -> Room:
        """The fold of the committed log."""
        return logged_room(self.server, self.room)

    def restart(self, start_server: StartServer) -> None:
        """Kill the server, start it again over the same data and port; everybody comes back."""
        players = list(self.seats)
        self.server.kill()
        self.hang_up()
        self.server = start_server(self.server.data, port=self.server.port)
        self.host = host_voice(self.server, self.cookie)
        self.host.done("open_desk", room=self.room)
        if self.door:
            self.wall = Voice(self.server)
            self.wall.done("watch_wall", door_code=self.door)
        for player in players:
            self.seats[player] = Voice(self.server)
            self.seats[player].done("resume_seat", door_code=self.door, seat_key=f"secret key of {player}")

    def hang_up(self) -> None:
        """Everybody leaves."""
        for voice in (self.host, self.wall, *self.seats.values()):
            if voice is not None:
                voice.hang_up()


def prepared(server: Server, **changes: Any) -> Lesson:
    """A review as laid out, its door still shut."""
    cookie = host_cookie(server.desk_link)
    host = host_voice(server, cookie)
    wanted: dict[str, Any] = {
        "title": "Arm and forearm",
        "course": COURSE,
        "families": ["nerve", "set", "action"],
        "rounds": 3,
        "timing": "untimed",
        "typed": False,
        "standings": True,
        "seed": 7,
    }
    desk = host.done("prepare_review", **(wanted | changes))["desk"]
    return Lesson(server, cookie, host, desk["room"], desk)


def gathered(server: Server, players: Iterable[str] = PLAYERS, **changes: Any) -> Lesson:
    """The same with its door open, a wall, and players in their seats."""
    lesson = prepared(server, **changes)
    lesson.host.done("open_door", round=0)
    lesson.door = lesson.desk()["public"]["door_code"]
    lesson.wall = Voice(server)
    lesson.wall.done("watch_wall", door_code=lesson.door)
    for player in players:
        lesson.enter(player)
    return lesson


def marks_by_handle(room: Room) -> dict[str, tuple[float, int]]:
    """The marks that follow from a fold, by nothing but the rules."""
    totals = marks_of_room(room).totals
    return {
        player.handle: (totals[player.id].marks, totals[player.id].of) for player in room.players.values()
    }


def _answer_to(item: dict[str, Any], *, wrong: bool) -> dict[str, Any]:
    if not item["options"]:
        return {"typed": ["quite another thing"] if wrong else item["key_text"][: item["pick"]]}
    letters = [option["letter"] for option in item["options"] if option["is_key"] != wrong]
    return {"choice": letters[: item["pick"]]}
