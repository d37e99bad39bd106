"""A course over several reviews: what grew, what came again, who was there."""

from dataclasses import replace
from datetime import timedelta

from quizroom.analysis.course_report import CourseReport, course_report
from quizroom.analysis.review_report import ReviewReport, review_report
from quizroom.marking import marks_of_room
from quizroom.room.commands import CloseRound, OpenRound
from tests.room.sample_items import one_best, pick_three
from tests.room.samples import NOON, after, gathered, ordered, says


def week(number: int, right: int, *, rehearsal: bool = False, people: int = 8) -> ReviewReport:
    """The review of a week: the same question each time, and so many who get it right."""
    players = tuple(f"p{place}" for place in range(people))
    room = gathered(one_best(f"deltoid {number}"), players=players)
    room = ordered(room, OpenRound(round=1))
    answers = [says(player, "B" if place < right else "A") for place, player in enumerate(players)]
    room = ordered(room, *answers, at=after(20))
    room = ordered(room, CloseRound(round=1, by_host=True), at=after(21))
    plan = replace(room.plan, rehearsal=rehearsal)
    at = NOON + timedelta(weeks=number)
    room = replace(room, id=f"week-{number}", plan=plan, prepared_at=at)
    return review_report(room, marks_of_room(room))


def course(*reviews: ReviewReport) -> CourseReport:
    found = course_report(reviews)
    assert found is not None
    return found


def test_a_question_that_came_again_shows_what_has_grown() -> None:
    found = course(week(2, 6), week(1, 2))
    assert [review.room for review in found.reviews] == ["week-1", "week-2"]
    (met,) = found.met_again
    assert [meeting.share.mean for meeting in met.meetings] == [0.25, 0.75]
    assert met.change == 0.5
    assert [found.muscles["Deltoid", place].mean for place in (0, 1)] == [0.25, 0.75]


def test_what_to_explain_again_is_judged_by_the_last_time() -> None:
    assert course(week(1, 2), week(2, 8)).again == ()
    found = course(week(1, 8), week(2, 2))
    assert [(one.review, one.again.mean) for one in found.again] == [(1, 0.25)]
    assert found.mastery.cells["Deltoid", "nerve"].mean == 0.25


def test_rehearsals_are_left_out_unless_there_is_nothing_else() -> None:
    assert [one.room for one in course(week(1, 2, rehearsal=True), week(2, 6)).reviews] == ["week-2"]
    assert [one.is_rehearsal for one in course(week(1, 2, rehearsal=True)).reviews] == [True]


def test_a_review_that_nobody_answered_says_nothing() -> None:
    empty = gathered(pick_three(), players=())
    report = review_report(empty, marks_of_room(empty))
    assert course_report([report]) is None
    assert len(course(report, week(1, 3)).reviews) == 1


def test_attendance_is_by_handle() -> None:
    found = course(week(1, 2, people=2), week(2, 2, people=3))
    assert {one.handle: one.reviews for one in found.attendance} == {
        "P0": ((1, 1), (1, 1)),
        "P1": ((1, 1), (1, 1)),
        "P2": (None, (1, 1)),
    }
