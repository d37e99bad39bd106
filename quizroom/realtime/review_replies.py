"""What owners say about their reviews as things, and the list that comes of it."""

from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta

from quizroom.protocol import review_messages
from quizroom.protocol.desk_messages import ListReviews
from quizroom.protocol.replies import PlanOptions, Reply, ReviewLine
from quizroom.protocol.review_messages import ReviewMessage
from quizroom.realtime.replies import done
from quizroom.realtime.seats import Seat
from quizroom.room.host_commands import ChangeReview, RenameReview
from quizroom.room.state import Room
from quizroom.room.stations import items_to_come
from quizroom.service.review_list import ListedReview, ReviewList
from quizroom.service.rooms import Rooms, UnknownRoom
from quizroom.views.moment import milliseconds

MOST_LISTED = 500
"""Reviews in one reply; older ones are asked for by `skip`."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewReplies:
    """Answers each of these messages with the list as it is then."""

    review_list: ReviewList
    rooms: Rooms

    def answer(self, seat: Seat, message: ReviewMessage | ListReviews) -> Reply:
        """Carry out a message; its right was judged by the gateway. Refusals of the room are raised."""
        if not isinstance(message, ListReviews):
            self._carry_out(seat, message)
        known = self.review_list.shelf.of_host(seat.host)
        skip = message.skip if isinstance(message, ListReviews) else 0
        lines = tuple(map(self._line, known[skip : skip + MOST_LISTED]))
        return replace(
            done(message.id, self.review_list.clock.now(), reviews=lines), reviews_in_all=len(known)
        )

    def _carry_out(self, seat: Seat, message: ReviewMessage) -> None:
        known = self.rooms.find(message.room)
        if known is None and isinstance(message, review_messages.ReviewStep) and _deletes(message):
            return  # it was deleted by the same message before
        room = self._own(known, seat)
        match message:
            case review_messages.RenameReview():
                self.rooms.handle(room.id, RenameReview(title=message.title))
            case review_messages.ChangeReview():
                order = ChangeReview(
                    timing=message.timing,
                    seconds=message.seconds,
                    certainty=message.certainty,
                    players_take_time=message.players_take_time,
                )
                self.rooms.handle(room.id, order)
            case review_messages.CopyReview():
                self.review_list.copy(room, dealt=message.dealt, order=message.id)
            case review_messages.ScheduleReview():
                at = None if message.at is None else _moment(message.at)
                self.review_list.plan(room, at, opens_itself=message.opens_itself)
            case review_messages.ReviewStep() if _deletes(message):
                self.review_list.delete(room)
            case review_messages.ReviewStep():
                self.review_list.archive(room, on=message.type == "archive_review")

    def _own(self, known: Room | None, seat: Seat) -> Room:
        if known is None or known.host != seat.host:
            raise UnknownRoom
        return self.rooms.fresh(known.id)

    def _line(self, listed: ListedReview) -> ReviewLine:
        # Whoever is not finished is in memory since the start; finished ones are not read for a list.
        room = self.rooms.find(listed.room) if listed.finished_at is None else None
        return ReviewLine(
            room=listed.room,
            title=listed.title,
            course=listed.course,
            phase=room.phase if room else "finished",
            rounds=len(room.rounds) + len(items_to_come(room)) if room else listed.rounds,
            prepared_at=milliseconds(listed.prepared_at),
            finished_at=_ms(listed.finished_at),
            planned_at=_ms(listed.planned_at),
            opens_itself=listed.opens_itself,
            archived=listed.archived_at is not None,
            options=_options(room),
        )


def _options(room: Room | None) -> PlanOptions | None:
    if room is None or room.phase != "preparing":
        return None
    plan = room.plan
    return PlanOptions(
        timing=plan.timing,
        seconds=plan.seconds,
        certainty=plan.certainty,
        players_take_time=plan.players_take_time,
    )


def _deletes(message: review_messages.ReviewStep) -> bool:
    return message.type == "delete_review"


def _moment(ms: int) -> datetime:
    return datetime(1970, 1, 1, tzinfo=UTC) + timedelta(milliseconds=ms)


def _ms(at: datetime | None) -> int | None:
    return None if at is None else milliseconds(at)
