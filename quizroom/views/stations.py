"""What is told while benches are at stations: to all where each bench is, to a seat its own bench's item."""

from dataclasses import replace

from quizroom.analysis.certainty import asks_certainty
from quizroom.room.benches import members
from quizroom.room.state import Answer, Room, Stations
from quizroom.room.stations import are_open
from quizroom.views.item_face import item_face
from quizroom.views.item_model import ClockFace
from quizroom.views.moment import milliseconds
from quizroom.views.own_model import AnswerFace, OwnBench, OwnStation, OwnView
from quizroom.views.public_model import PublicView
from quizroom.views.station_model import StationRow, StationsFace


def at_stations(room: Room, view: PublicView) -> PublicView:
    """The public view while benches are at stations, and until the first result: nothing of any item."""
    block = room.stations
    if block is None or room.phase != "stations":
        return view
    return replace(
        view,
        item=None,
        asks_certainty=False,
        clock=None if block.over else _clock_face(block),
        result=None,
        second=None,
        records=(),
        standings=None,
    )


def stations_face(room: Room) -> StationsFace | None:
    """Where everybody is; None where no item of stations is left to be shown."""
    block = room.stations
    if block is None:
        return None
    return StationsFace(
        turn=block.turn,
        of=len(block.items),
        over=block.over,
        to_show=to_show(room),
        rows=tuple(StationRow(bench=bench, item=block.place_of(bench) + 1) for bench in block.benches),
    )


def to_show(room: Room) -> int:
    """How many items of stations have not become rounds yet."""
    return 0 if room.stations is None else len(room.stations.items) - room.stations.shown


def own_at_station(room: Room, player: str, view: OwnView) -> OwnView:
    """A player's own view at stations: the item of the own bench, and what was said to it."""
    block = room.stations
    if block is None or room.phase != "stations":
        return view
    bench = room.benches.get(player, "")
    place = block.place_of(bench)
    number = block.first + place
    may_answer = are_open(room) and room.players[player].from_round <= block.first
    item = block.items[place]
    return replace(
        view,
        answer=_answer_face(number, block.answers[place].get(player)),
        second=None,
        result=None,
        flag=None,
        bench=None if view.bench is None else _bench_at(room, block, bench, view.bench),
        station=OwnStation(
            item=item_face(item, number), number=place + 1, asks_certainty=asks_certainty(room, item)
        )
        if may_answer
        else None,
    )


def _bench_at(room: Room, block: Stations, bench: str, known: OwnBench) -> OwnBench:
    place = block.place_of(bench)
    return replace(
        known,
        answered_alone=sum(one in block.answers[place] for one in members(room, bench)) if bench else 0,
        answer=_answer_face(block.first + place, block.bench_answers[place].get(bench)),
        mark=None,
    )


def _answer_face(number: int, answer: Answer | None) -> AnswerFace | None:
    if answer is None:
        return None
    return AnswerFace(round=number, choice=answer.choice, typed=answer.typed, certainty=answer.certainty)


def _clock_face(block: Stations) -> ClockFace:
    closes_at = None if block.closes_at is None else milliseconds(block.closes_at)
    return ClockFace(limit_ms=block.limit_ms, closes_at=closes_at, left_ms=None, paused=False)
