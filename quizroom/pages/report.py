"""What reviews told, for their host alone: a report of each, and of a course over time."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from flask import Blueprint, Response, abort, render_template, request
from werkzeug.wrappers import Response as AnyResponse

from quizroom.analysis.cannot_say import what_numbers_cannot_say
from quizroom.analysis.course_report import AgainLater, CourseReport
from quizroom.analysis.explain_again import Again
from quizroom.analysis.mastery import standing_of
from quizroom.analysis.review_report import ReviewReport
from quizroom.exchange.report_sheet import item_sheets_csv
from quizroom.pages import report_words as words
from quizroom.pages.bundle import bundle_of
from quizroom.pages.host_entry import COOKIE, HostEntry
from quizroom.service.reports import Reports
from quizroom.views.changes import words_of

MOST_AGAIN, MOST_CONFUSIONS = 12, 15


@dataclass(frozen=True, slots=True, kw_only=True)
class AgainRow:
    """A line of the list of what to explain again; `where` says in which review, if there are several."""

    again: Again
    where: str = ""
    room: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ReportPages:
    """What the pages need; `closed` answers who is no host."""

    entry: HostEntry
    reports: Reports
    manifest: Mapping[str, Any]
    closed: Callable[[], AnyResponse]


def add_reports(routes: Blueprint, pages: ReportPages) -> None:
    """Give the blueprint the pages."""

    @routes.get("/desk/report/<room>")
    def review_report(room: str) -> AnyResponse:
        return _for_host(pages, lambda host: _review(pages, room, host))

    @routes.get("/desk/report/<room>/items.csv")
    def review_items(room: str) -> AnyResponse:
        return _for_host(pages, lambda host: _items(pages, room, host))

    @routes.get("/desk/report/course/<course>")
    def course_report(course: str) -> AnyResponse:
        return _for_host(pages, lambda host: _course(pages, course, host))


def _for_host(pages: ReportPages, page: Callable[[str], AnyResponse]) -> AnyResponse:
    host = pages.entry.host_of_token(request.cookies.get(COOKIE, ""))
    if host is None:
        return pages.closed()
    answer = page(host.leads)
    answer.headers["Cache-Control"] = "private, no-store"
    return answer


def _review(pages: ReportPages, room: str, host: str) -> AnyResponse:
    report = _found(pages.reports.review(room, host=host))
    return _page(
        pages,
        "report.html",
        report=report,
        short=words.in_short(report),
        cautions=what_numbers_cannot_say(report),
        again=[AgainRow(again=one) for one in report.again[:MOST_AGAIN]],
        link=lambda row: f"#round-{row.again.round}",
        most_confusions=MOST_CONFUSIONS,
        change_words=words_of,
        host_name=lambda host: _host_name(pages, host),
        placed={one.round: one for one in report.scale.items} if report.scale else {},
    )


def _host_name(pages: ReportPages, host: str) -> str:
    known = pages.entry.hosts.host(host) if host else None
    return known.name if known else words.NOTHING


def _items(pages: ReportPages, room: str, host: str) -> AnyResponse:
    report = _found(pages.reports.review(room, host=host))
    # The mark at the head lets spreadsheets read it as UTF-8.
    answer = Response("\N{BYTE ORDER MARK}" + item_sheets_csv(report), content_type="text/csv; charset=utf-8")
    answer.headers["Content-Disposition"] = f'attachment; filename="items-{report.room}.csv"'
    return answer


def _course(pages: ReportPages, course: str, host: str) -> AnyResponse:
    report = pages.reports.course(course, host=host)
    if report is None:
        abort(404)
    rows = [_again_row(report, one) for one in report.again[:MOST_AGAIN]]
    link = "/desk/report/{0.room}#round-{0.again.round}".format
    muscles = sorted({muscle for muscle, _ in report.muscles})
    return _page(pages, "report_course.html", report=report, again=rows, link=link, muscles=muscles)


def _again_row(report: CourseReport, one: AgainLater) -> AgainRow:
    review = report.reviews[one.review]
    return AgainRow(again=one.again, where=f" · last asked on {words.day(review.at)}", room=review.room)


def _found(report: ReviewReport | None) -> ReviewReport:
    if report is None:
        abort(404)
    return report


def _page(pages: ReportPages, template: str, **shown: Any) -> Response:
    bundle = bundle_of(pages.manifest, "report")
    return Response(render_template(template, words=words, standing=standing_of, bundle=bundle, **shown))
