"""A course over time: all reviews of one course list that a host led, the oldest first."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from quizroom.analysis.explain_again import Again
from quizroom.analysis.mastery import Mastery, Share, mastery_of, muscles_of
from quizroom.analysis.review_report import ReviewReport
from quizroom.questions.experience import ask_key
from quizroom.questions.model import Item


@dataclass(frozen=True, slots=True, kw_only=True)
class Meeting:
    """An item in one of the reviews; `review` counts from 0."""

    review: int
    round: int
    item: Item
    share: Share


@dataclass(frozen=True, slots=True, kw_only=True)
class MetAgain:
    """A question that was asked in more than one review."""

    item: Item
    meetings: tuple[Meeting, ...]

    @property
    def change(self) -> float:
        """The last mean mark less the first."""
        return self.meetings[-1].share.mean - self.meetings[0].share.mean


@dataclass(frozen=True, slots=True, kw_only=True)
class AgainLater:
    """What to explain again, as the question stood when it was last asked."""

    review: int
    again: Again


@dataclass(frozen=True, slots=True, kw_only=True)
class Attended:
    """A handle over the reviews: (rounds answered, rounds closed), None where it was not there."""

    handle: str
    reviews: tuple[tuple[int, int] | None, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class CourseReport:
    """What all reviews of a course list tell together."""

    course: str
    course_title: str
    reviews: tuple[ReviewReport, ...]
    mastery: Mastery
    """Muscle by family, each question as it stood when it was last asked."""
    muscles: dict[tuple[str, int], Share]
    """By muscle and review, so that it shows what has grown."""
    met_again: tuple[MetAgain, ...]
    again: tuple[AgainLater, ...]
    attendance: tuple[Attended, ...]


def course_report(reviews: Sequence[ReviewReport]) -> CourseReport | None:
    """All reviews of one course list together; those that nobody answered say nothing and are left out.

    Rehearsals are left out as well, unless there is nothing else. None if no review is left.
    """
    answered = sorted((one for one in reviews if one.answered), key=_when)
    real = [one for one in answered if not one.is_rehearsal] or answered
    if not real:
        return None
    meetings = _meetings(real)
    last = [each[-1] for each in meetings.values()]
    return CourseReport(
        course=real[-1].course,
        course_title=real[-1].course_title,
        reviews=tuple(real),
        mastery=mastery_of((each.item, each.share) for each in last),
        muscles=_muscles(each for several in meetings.values() for each in several),
        met_again=_met_again(meetings.values()),
        again=_again(real, {(each.review, each.round) for each in last}),
        attendance=_attendance(real),
    )


def _when(report: ReviewReport) -> tuple[float, str]:
    return (report.at.timestamp() if report.at else 0.0), report.room


def _meetings(reviews: Sequence[ReviewReport]) -> dict[str, list[Meeting]]:
    found: dict[str, list[Meeting]] = {}
    for place, review in enumerate(reviews):
        for sheet in review.sheets:
            answered = sheet.numbers.answered
            if answered:
                share = Share(answers=answered, marks=answered * (sheet.numbers.difficulty or 0.0))
                one = Meeting(review=place, round=sheet.round, item=sheet.item, share=share)
                found.setdefault(ask_key(sheet.item), []).append(one)
    return found


def _muscles(meetings: Iterable[Meeting]) -> dict[tuple[str, int], Share]:
    found: dict[tuple[str, int], Share] = {}
    for one in meetings:
        for muscle in muscles_of(one.item):
            at = (muscle, one.review)
            found[at] = found[at].plus(one.share) if at in found else one.share
    return found


def _met_again(meetings: Iterable[list[Meeting]]) -> tuple[MetAgain, ...]:
    several = (each for each in meetings if len({one.review for one in each}) > 1)
    found = [MetAgain(item=each[-1].item, meetings=tuple(each)) for each in several]
    return tuple(sorted(found, key=lambda one: (one.change, one.item.id)))


def _again(reviews: Sequence[ReviewReport], last: set[tuple[int, int]]) -> tuple[AgainLater, ...]:
    found = [
        AgainLater(review=place, again=again)
        for place, review in enumerate(reviews)
        for again in review.again
        if (place, again.round) in last
    ]
    return tuple(sorted(found, key=lambda one: (-round(one.again.need, 9), -one.review, one.again.round)))


def _attendance(reviews: Sequence[ReviewReport]) -> tuple[Attended, ...]:
    """By handle; the same handle in two reviews need not be the same person."""
    there = [{one.handle: (one.answered, len(one.rounds)) for one in review.attendance} for review in reviews]
    handles = sorted({handle for each in there for handle in each}, key=lambda one: (one.casefold(), one))
    return tuple(
        Attended(handle=handle, reviews=tuple(each.get(handle) for each in there)) for handle in handles
    )
