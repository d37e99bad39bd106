"""The view that the wall and every seat share."""

from datetime import datetime

from quizroom.analysis.certainty import asks_certainty
from quizroom.knowledge.record import Record
from quizroom.marking import RoomMarks, standings
from quizroom.room.holding import is_held
from quizroom.room.own_time import hides_counts, told_version
from quizroom.room.state import TIMED, Room, Round
from quizroom.room.stations import answers_now, items_to_come
from quizroom.room.taking_time import offers_time
from quizroom.views.benches import bench_rows, benches_face
from quizroom.views.group import group_face
from quizroom.views.item_face import item_face
from quizroom.views.item_model import ClockFace
from quizroom.views.moment import milliseconds
from quizroom.views.public_model import PublicView, StandingRow
from quizroom.views.result_model import ResultFace
from quizroom.views.results import result_face
from quizroom.views.stations import at_stations, stations_face
from quizroom.views.talk import shown_second
from quizroom.views.telling import records_waiting, round_as_told

CAUTIONS = (
    "For teaching and self-study. Not for diagnosis, treatment, surgery or injection-site decisions.",
    "Anatomy varies. This review follows your course list; points on which books differ are marked.",
    "Marks here are practice, not a grade, unless your instructor says so.",
)
CAUTIONS_FOR_CREDIT = (
    *CAUTIONS[:2],
    "This review is for credit: your instructor takes the marks of whoever is on the class roster.",
)


def public_view(room: Room, marks: RoomMarks, now: datetime) -> PublicView:
    """What anybody in the room may see. Before a round closes nothing here depends on its key,
    nor while its result is held.
    """
    current = round_as_told(room)
    view = PublicView(
        version=told_version(room),
        now=milliseconds(now),
        phase=room.phase,
        title=room.plan.title,
        course=room.plan.course_title,
        door_code=room.door_code,
        players=len(room.players),
        answered=answered(room),
        round=len(room.rounds),
        rounds=len(room.rounds) + len(items_to_come(room)),
        item=item_face(current.item, current.number) if current else None,
        asks_certainty=current is not None and asks_certainty(room, current.item),
        clock=_clock_face(current) if current and room.phase in TIMED else None,
        result=_result(room, current, marks),
        second=shown_second(room, marks),
        records=_records(current),
        waiting=records_waiting(room, current),
        standings=_standing_rows(room, marks),
        cautions=CAUTIONS_FOR_CREDIT if room.plan.roster else CAUTIONS,
        group=group_face(room),
        benches=benches_face(room),
        for_credit=bool(room.plan.roster),
        offers_time=offers_time(room),
        stations=stations_face(room),
    )
    return at_stations(room, view)


def answered(room: Room) -> int | None:
    """How many players who are still here have answered the current round; of a held one as it closed.

    While it is answered again only second answers are counted. None where nobody may know, lest it show that
    somebody answered after the deadline.
    """
    if room.phase == "stations":
        return len(answers_now(room))
    if not room.rounds:
        return 0
    if hides_counts(room):
        return None
    if room.phase == "answering again":
        return len(room.rounds[-1].second_answers)
    return room.rounds[-1].answered_at_closing if is_held(room) else len(room.rounds[-1].answers)


def standings_are_out(room: Room) -> bool:
    """Whether there are standings to show: between a result and the next round."""
    early = room.phase in ("preparing", "gathering", "answering", "stations")
    return room.standings and not early and not is_held(room)


def _clock_face(current: Round) -> ClockFace:
    return ClockFace(
        limit_ms=current.limit_ms,
        closes_at=None if current.closes_at is None else milliseconds(current.closes_at),
        left_ms=current.left_ms,
        paused=current.paused,
    )


def _result(room: Room, current: Round | None, marks: RoomMarks) -> ResultFace | None:
    if current is None or current.shown_at is None:
        return None
    expected = sum(player.from_round <= current.number for player in room.players.values())
    return result_face(current, marks.rounds[-1], of=expected)


def _records(current: Round | None) -> tuple[Record, ...]:
    return current.item.records if current is not None and current.explained_at is not None else ()


def _standing_rows(room: Room, marks: RoomMarks) -> tuple[StandingRow, ...] | None:
    if not standings_are_out(room):
        return None
    if room.plan.benches is not None:
        return bench_rows(marks)
    return tuple(
        StandingRow(place=row.place, handle=row.handle, marks=row.marks, of=row.of)
        for row in standings(room, marks)
    )
