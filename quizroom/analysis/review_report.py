"""The report of a review: everything that its numbers can say, and in words what they cannot."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import datetime

from quizroom.analysis.attendance import Attendance, attendance_of
from quizroom.analysis.certainty import Sureness, sureness_of_room
from quizroom.analysis.confusions import Confusion, confusions_of
from quizroom.analysis.explain_again import Again, explain_again
from quizroom.analysis.item_sheets import ItemSheet, item_sheets
from quizroom.analysis.mastery import Mastery, Share, mastery_of
from quizroom.analysis.responses import Column, responses_of
from quizroom.analysis.talk import TalkOfRound, talk_of_room
from quizroom.analysis.whole_review import Reliability, Scale, reliability_of, scale_of
from quizroom.marking import RoomMarks, RoundMarks, counts
from quizroom.room.change_noting import changes_of
from quizroom.room.changes import Change
from quizroom.room.state import Room

Pair = tuple[Column, RoundMarks]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewReport:
    """What a review tells its host. It follows from the log, so a strike or a ruling changes it."""

    room: str
    version: int
    title: str
    course: str
    course_title: str
    at: datetime | None
    """When it was laid out."""
    is_finished: bool
    is_rehearsal: bool
    players: int
    answered: int
    """How many players' answers the numbers are made of."""
    struck: tuple[int, ...]
    """Rounds that were struck, so that they are in no number."""
    marks: Share
    sheets: tuple[ItemSheet, ...]
    again: tuple[Again, ...]
    reliability: Reliability | None
    scale: Scale | None
    mastery: Mastery
    confusions: tuple[Confusion, ...]
    talk: tuple[TalkOfRound, ...]
    """What talking changed, in the rounds that were answered again."""
    changes: tuple[Change, ...]
    """What hosts changed of what answers are worth, in order."""
    attendance: tuple[Attendance, ...]
    sureness: Sureness | None
    """None where certainty was not asked for, or nobody said any."""


def review_report(room: Room, marks: RoomMarks, breathe: Callable[[], None] = lambda: None) -> ReviewReport:
    """The report of a room as it now stands; `breathe` is called in between, for it takes a while."""
    responses = responses_of(room, marks, breathe)
    marked = [each for current, each in zip(room.rounds, marks.rounds, strict=True) if counts(current)]
    pairs = list(zip(responses.columns, marked, strict=True))
    sureness = sureness_of_room(room, marks)
    sheets = item_sheets(responses, marked, breathe)
    return ReviewReport(
        room=room.id,
        version=room.version,
        title=room.plan.title,
        course=room.plan.course,
        course_title=room.plan.course_title,
        at=room.prepared_at,
        is_finished=room.phase == "finished",
        is_rehearsal=room.plan.rehearsal,
        players=len(room.players),
        answered=len(responses.players),
        struck=tuple(one.number for one in room.rounds if one.struck and one.closed_at is not None),
        marks=Share(
            answers=sum(len(column.marks) for column in responses.columns),
            marks=sum(_marks(column) for column in responses.columns),
        ),
        sheets=sheets,
        again=explain_again(_one_by_one(pairs, breathe)),
        reliability=reliability_of(responses, breathe),
        scale=scale_of(responses, breathe),
        mastery=mastery_of((column.current.item, _share(column)) for column in responses.columns),
        confusions=confusions_of(_one_by_one(pairs, breathe)),
        talk=talk_of_room(room, marks),
        changes=changes_of(room),
        attendance=attendance_of(room),
        sureness=sureness if sureness and sureness.answers else None,
    )


def _one_by_one(pairs: list[Pair], breathe: Callable[[], None]) -> Iterator[Pair]:
    for pair in pairs:
        breathe()
        yield pair


def _share(column: Column) -> Share:
    return Share(answers=len(column.marks), marks=_marks(column))


def _marks(column: Column) -> float:
    return sum(column.marks.values())
