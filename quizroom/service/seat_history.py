"""What a player did in reviews: the rounds that count for a seat, slim enough to be kept in memory."""

from collections import OrderedDict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime

from quizroom.analysis.misses import Played, misses, played_rounds
from quizroom.marking import marks_of_room
from quizroom.questions.model import Item
from quizroom.room.state import Room
from quizroom.second_look.asked import Missed
from quizroom.second_look.sighting import Said
from quizroom.service.look_ports import SeatOfPlayer
from quizroom.service.ports import EventLog
from quizroom.service.rooms import Rooms
from quizroom.views.changes import own_flags
from quizroom.views.look import contrast_of, said_text, verdicts_of
from quizroom.views.results import key_text

MOST_KEPT = 2000
"""Seats whose history is kept in memory; of others the log is read again."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PlayedRound:
    """One round as a seat went through it. `missed` tells what was wrong with it, if it was not right."""

    number: int
    item: Item
    said: Said
    at: datetime
    missed: Missed | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SeatHistory:
    """One review from one seat. `missed` holds the missed rounds, certain and wrong ones first."""

    room: str
    seat: str
    version: int
    title: str
    course: str
    finished_at: datetime | None
    rounds: tuple[PlayedRound, ...]
    missed: tuple[PlayedRound, ...]
    has_host: bool
    """Whether somebody would read a flag: groups have no host."""
    flags: Mapping[int, str]
    """The words of the flags that this seat has up, by round."""


class SeatHistories:
    """Reads histories from the rooms' logs, and keeps them until something happens in their room."""

    def __init__(self, *, rooms: Rooms, log: EventLog) -> None:
        """Read from live rooms, and from the log those that are not."""
        self._rooms = rooms
        self._log = log
        self._kept: OrderedDict[tuple[str, str], SeatHistory] = OrderedDict()

    def of(self, seats: Iterable[SeatOfPlayer]) -> tuple[SeatHistory, ...]:
        """The histories of these seats; of rooms that are gone there are none."""
        found = (self._history(seat.room, seat.player) for seat in seats)
        return tuple(history for history in found if history is not None)

    def _history(self, room_id: str, seat: str) -> SeatHistory | None:
        kept = self._kept.get((room_id, seat))
        if kept is not None and not self._log.read(room_id, after=kept.version):
            self._kept.move_to_end((room_id, seat))
            return kept
        room = self._rooms.find(room_id)
        if room is None or seat not in room.players:
            return None
        history = seat_history(room, seat)
        self._kept[room_id, seat] = history
        if len(self._kept) > MOST_KEPT:
            self._kept.popitem(last=False)
        return history


def seat_history(room: Room, seat: str) -> SeatHistory:
    """What a seat did in a room, by the marks as they stand now."""
    played = played_rounds(room, seat, marks_of_room(room))
    rounds = {one.current.number: _played_round(room, one) for one in played}
    return SeatHistory(
        room=room.id,
        seat=seat,
        version=room.version,
        title=room.plan.title or room.plan.course_title,
        course=room.plan.course,
        finished_at=room.finished_at,
        rounds=tuple(rounds.values()),
        missed=tuple(rounds[one.current.number] for one in misses(played)),
        has_host=room.run is None,
        flags={one.round: one.text for one in own_flags(room, room.players[seat])},
    )


def _played_round(room: Room, one: Played) -> PlayedRound:
    current, answer = one.current, one.answer
    at = answer.at if answer is not None else current.closed_at or current.opened_at
    said = Said(
        answer=answer,
        mark=one.mark,
        took_ms=_took_ms(one, at),
        certainty=one.certainty,
    )
    missed = None if one.mark is not None and one.mark >= 1.0 else _missed(room, one, at)
    return PlayedRound(number=current.number, item=current.item, said=said, at=at, missed=missed)


def _took_ms(one: Played, at: datetime) -> int:
    if one.answer is not None and one.answer.took_ms is not None:
        return one.answer.took_ms
    return max(0, round((at - one.current.opened_at).total_seconds() * 1000))


def _missed(room: Room, one: Played, at: datetime) -> Missed:
    item, answer = one.current.item, one.answer
    contrast = None
    if answer is not None:
        contrast = contrast_of(item, answer, verdicts_of(item, answer, one.current.rulings))
    return Missed(
        title=room.plan.title or room.plan.course_title,
        at=at,
        stem=item.stem,
        chosen="" if answer is None else said_text(item, answer),
        key_text=key_text(item),
        contrast=contrast,
    )
