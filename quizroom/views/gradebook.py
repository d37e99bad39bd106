"""The marks of a review for credit, by opaque entries of the roster: for the host's page and files alone."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime

from quizroom.marking import RoomMarks
from quizroom.room.state import Room


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewMarks:
    """A column of the gradebook.

    `most` is the number of rounds that count. Who is not in `marks` has claimed no seat or answered nothing:
    that is not a mark of 0.
    """

    room: str
    title: str
    began_at: datetime | None
    most: int
    marks: Mapping[str, float]
    claimed: int
    """How many entries of the roster have a seat."""
    finished: bool


def review_marks(room: Room, marks: RoomMarks) -> ReviewMarks:
    """The marks of everybody who has said who they are and has answered, as they now stand. Never below 0."""
    answered = {player for current in marks.counted for player in current.marks}
    return ReviewMarks(
        room=room.id,
        title=room.plan.title,
        began_at=room.rounds[0].opened_at if room.rounds else room.prepared_at,
        most=len(marks.counted),
        marks={
            entry: max(0.0, marks.totals[player].marks)
            for player, entry in room.claims.items()
            if player in answered
        },
        claimed=len(room.claims),
        finished=room.phase == "finished",
    )
