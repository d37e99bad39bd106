"""The item sheets of a review as CSV (RFC 4180), one row an item."""

import csv
import io
from collections.abc import Iterator

from quizroom.analysis.rasch import Estimate
from quizroom.analysis.review_report import ReviewReport
from quizroom.exchange.csv_cells import harmless

HEADINGS = (
    *("round", "family", "direction", "format", "muscles", "stem", "key"),
    *("answered", "rapid_guesses", "no_answer"),
    *("difficulty", "difficulty_low_95", "difficulty_high_95", "corrected_for_guessing"),
    *("corrected_point_biserial", "point_biserial_low_95", "point_biserial_high_95"),
    *("discrimination_27", "group_size", "functioning_distractors", "distractors", "verdict"),
    *("rasch_conditional", "rasch_conditional_error", "rasch_prox", "rasch_prox_error"),
    *("most_taken_for_it", "people_who_took_it"),
)
PLACES = 4


def item_sheets_csv(report: ReviewReport) -> str:
    """The sheets with CRLF and a header row. What cannot be computed is blank, not 0."""
    written = io.StringIO()
    rows = csv.writer(written)
    rows.writerow(HEADINGS)
    rows.writerows(_rows(report))
    return written.getvalue()


def _rows(report: ReviewReport) -> Iterator[list[str]]:
    placed = {one.round: one for one in report.scale.items} if report.scale else {}
    taken = {one.round: one for one in report.again if one.took}
    for sheet in report.sheets:
        item, numbers, scale = sheet.item, sheet.numbers, placed.get(sheet.round)
        apart, error = numbers.distractors, taken.get(sheet.round)
        together = numbers.point_biserial_interval
        yield [
            str(sheet.round),
            *map(harmless, (item.family, item.direction, item.format)),
            harmless("; ".join(record.name for record in item.records)),
            harmless(item.stem),
            harmless(_key(sheet.item.key, [one.text for one in item.accepted])),
            *(str(number) for number in (numbers.answered, numbers.rapid, numbers.silent)),
            *_figures(numbers.difficulty, numbers.interval.low, numbers.interval.high),
            *_figures(numbers.guessing_corrected, numbers.point_biserial),
            *(_figures(together.low, together.high) if together else ("", "")),
            *_figures(numbers.discrimination),
            str(numbers.group),
            "" if apart is None or apart.functioning is None else str(apart.functioning),
            "" if apart is None else str(apart.distractors),
            numbers.verdict or "",
            *_estimate(scale.conditional if scale else None),
            *_estimate(scale.prox if scale else None),
            harmless(error.taken) if error else "",
            str(error.took) if error else "",
        ]


def _key(letters: tuple[str, ...], accepted: list[str]) -> str:
    return " ".join(letters) or "; ".join(accepted)


def _figures(*values: float | None) -> list[str]:
    # A figure of ours may begin with a minus sign: it is a number, not a formula.
    return ["" if value is None else str(round(value, PLACES)) for value in values]


def _estimate(found: Estimate | None) -> list[str]:
    return _figures(found.value, found.error) if found else ["", ""]
