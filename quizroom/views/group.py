"""What a review without a host shows of itself: how far everybody is, and who may do what."""

from datetime import datetime

from quizroom.room.group import opener, present, waited_for
from quizroom.room.state import Room
from quizroom.views.moment import milliseconds
from quizroom.views.own_model import OwnGroup, SeatMate
from quizroom.views.public_model import GroupFace


def group_face(room: Room) -> GroupFace | None:
    """The part of the public view; None where a host leads. Numbers alone, but for who has come in."""
    run = room.run
    if run is None:
        return None
    here = present(room)
    return GroupFace(
        present=len(here),
        waited_for=0 if room.phase in ("closed", "finished") else len(waited_for(room)),
        paused=run.paused,
        reading_until=_moment(run.reading_until),
        reading_left_ms=run.reading_left_ms,
        handles=tuple(room.players[player].handle for player in here) if room.phase == "gathering" else (),
    )


def own_group(room: Room, player: str) -> OwnGroup | None:
    """A player's own part; None where a host leads."""
    run = room.run
    if run is None:
        return None
    opens = opener(room) == player
    others = (other for other in room.players.values() if other.id != player)
    return OwnGroup(
        ready=player in run.ready,
        opener=opens,
        mates=tuple(SeatMate(player=one.id, handle=one.handle) for one in others) if opens else (),
    )


def _moment(at: datetime | None) -> int | None:
    return None if at is None else milliseconds(at)
