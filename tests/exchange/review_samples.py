"""Reviews for tests of their file: played by chance, with everything that a log can hold."""

from datetime import timedelta

from quizroom.exchange.review_file.plan import plan_of
from quizroom.exchange.review_file.reading import ReadReview, events_of
from quizroom.room.commands import EndReview
from quizroom.room.events import Event
from quizroom.room.folding import replay
from quizroom.room.laying_out import prepare
from quizroom.room.state import Room
from tests.exchange.uploads import drawing, file_of
from tests.room.histories import History, carried_out, laying_out, played
from tests.room.samples import NOON

PICTURE = file_of(drawing((64, 48)), "PNG")


def finished(history: History) -> tuple[Room, tuple[Event, ...]]:
    """A review carried out to its end, and its log."""
    log = [*prepare("room-1", laying_out(), NOON)]
    last = NOON
    for step in played(history):
        log += step.events
        last = step.at
    room = replay(log)
    assert room is not None
    end = carried_out(room, EndReview(ends_own_time=True), last + timedelta(seconds=90))
    return end.room, (*log, *end.events)


def read_back(review: ReadReview) -> tuple[Room, tuple[Event, ...]]:
    """The review of a file on another server, and its log there."""
    plan = plan_of(review.file, capacity=30, imported=True)
    log = events_of(review, "f" * 16, "bracken", plan, {name: name for name in review.pictures})
    room = replay(log)
    assert room is not None
    return room, log
