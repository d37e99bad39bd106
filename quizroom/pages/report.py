"""What reviews told, for their host alone: a report of each, and of a course over time."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from flask import Blueprint, Response, abort, redirect, url_for
from werkzeug.wrappers import Response as AnyResponse

from quizroom.exchange.csv_files import BYTE_ORDER_MARK
from quizroom.pages.desk_rights import host_of_request
from quizroom.pages.host_entry import HostEntry
from quizroom.pages.unkept import download, unkept
from quizroom.service.reports import Reports


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

    @routes.get("/desk/report/<room>/course")
    def course_of_review(room: str) -> AnyResponse:
        return _for_host(pages, lambda host: _way_to_course(pages, room, host))

    @routes.get("/desk/report/course/<course>")
    def course_report(course: str) -> AnyResponse:
        return _for_host(pages, lambda host: _course(pages, course, host))


def _for_host(pages: ReportPages, page: Callable[[str], AnyResponse]) -> AnyResponse:
    host = host_of_request(pages.entry)
    if host is None:
        return pages.closed()
    return unkept(page(host.leads))


def _review(pages: ReportPages, room: str, host: str) -> AnyResponse:
    from quizroom.pages.report_faces import review_page  # noqa: PLC0415 - statistics are for those who ask

    report = pages.reports.review(room, host=host)
    if report is None:
        abort(404)
    return Response(review_page(report, pages.manifest, lambda host: _name_of(pages, host)))


def _way_to_course(pages: ReportPages, room: str, host: str) -> AnyResponse:
    course = pages.reports.course_of(room, host=host)
    if not course:
        abort(404)
    return redirect(url_for(".course_report", course=course))


def _items(pages: ReportPages, room: str, host: str) -> AnyResponse:
    from quizroom.pages.report_faces import item_sheets_csv  # noqa: PLC0415 - likewise

    report = pages.reports.review(room, host=host)
    if report is None:
        abort(404)
    content = (BYTE_ORDER_MARK + item_sheets_csv(report)).encode()
    return download(content, "text/csv; charset=utf-8", f"items-{report.room}.csv")


def _course(pages: ReportPages, course: str, host: str) -> AnyResponse:
    from quizroom.pages.report_faces import course_page  # noqa: PLC0415 - likewise

    report = pages.reports.course(course, host=host)
    if report is None:
        abort(404)
    return Response(course_page(report, pages.manifest))


def _name_of(pages: ReportPages, host: str) -> str:
    known = pages.entry.hosts.host(host) if host else None
    return known.name if known else ""
