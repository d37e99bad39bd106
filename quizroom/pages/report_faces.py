"""What the pages of reports show. Loaded with the first report: a start need not know statistics."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from flask import render_template

from quizroom.analysis.cannot_say import what_numbers_cannot_say
from quizroom.analysis.course_report import AgainLater, CourseReport
from quizroom.analysis.explain_again import Again
from quizroom.analysis.mastery import standing_of
from quizroom.analysis.review_report import ReviewReport
from quizroom.exchange.report_sheet import item_sheets_csv as item_sheets_csv
from quizroom.pages import report_words as words
from quizroom.pages.bundle import bundle_of
from quizroom.views.changes import words_of

MOST_AGAIN, MOST_CONFUSIONS = 12, 15


@dataclass(frozen=True, slots=True, kw_only=True)
class AgainRow:
    """A line of the list of what to explain again; `where` says in which review, if there are several."""

    again: Again
    where: str = ""
    room: str = ""


def review_page(report: ReviewReport, manifest: Mapping[str, Any], name_of: Callable[[str], str]) -> str:
    """The report of a review; `name_of` gives the name of the host with an id, or "" if it is not known."""
    return _page(
        manifest,
        "report.html",
        report=report,
        short=words.in_short(report),
        cautions=what_numbers_cannot_say(report),
        again=[AgainRow(again=one) for one in report.again[:MOST_AGAIN]],
        link=lambda row: f"#round-{row.again.round}",
        most_confusions=MOST_CONFUSIONS,
        change_words=words_of,
        host_name=lambda host: name_of(host) or words.NOTHING,
        placed={one.round: one for one in report.scale.items} if report.scale else {},
    )


def course_page(report: CourseReport, manifest: Mapping[str, Any]) -> str:
    """The report of a course over time."""
    return _page(
        manifest,
        "report_course.html",
        report=report,
        again=[_again_row(report, one) for one in report.again[:MOST_AGAIN]],
        link="/desk/report/{0.room}#round-{0.again.round}".format,
        muscles=sorted({muscle for muscle, _ in report.muscles}),
    )


def _again_row(report: CourseReport, one: AgainLater) -> AgainRow:
    review = report.reviews[one.review]
    return AgainRow(again=one.again, where=f" · last asked on {words.day(review.at)}", room=review.room)


def _page(manifest: Mapping[str, Any], template: str, **shown: Any) -> str:
    bundle = bundle_of(manifest, "report")
    return render_template(template, words=words, standing=standing_of, bundle=bundle, **shown)
