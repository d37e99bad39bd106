"""What the numbers of a small class cannot say, in words."""

from collections.abc import Iterator

from quizroom.analysis.distractors import FEWEST_FOR_VERDICTS
from quizroom.analysis.intervals import wilson
from quizroom.analysis.review_report import ReviewReport

FEWEST_ITEMS = 10
"""With fewer items reliability is low whatever their quality (common practice, no source)."""
WIDE = 0.4
"""A range of reliability wider than this says little (own choice)."""


def what_numbers_cannot_say(report: ReviewReport) -> tuple[str, ...]:
    """Sentences for the head of a report; none for a large class and a long review."""
    return (*_of_people(report), *_of_items(report), *_of_scale(report))


def _of_people(report: ReviewReport) -> Iterator[str]:
    if report.is_rehearsal:
        yield "This was a rehearsal: programs answered, so nothing here tells of a class."
    if report.answered == 0:
        yield "Nobody has answered an item that counts, so there is nothing to compute yet."
    elif report.answered < FEWEST_FOR_VERDICTS:
        half = wilson(report.answered / 2, report.answered)
        yield (
            f"{_people(report.answered)} answered. If half of so few are right, the share in classes like "
            f"this may be anything from {round(100 * half.low)} to {round(100 * half.high)} %: read the "
            f"ranges, not the numbers. No verdict on an item is given with fewer than {FEWEST_FOR_VERDICTS} "
            "people."
        )


def _of_items(report: ReviewReport) -> Iterator[str]:
    found = report.reliability
    if found is None:
        if report.answered:
            yield "Reliability needs two items or more, and two people or more who answered all of them."
        return
    if found.items < FEWEST_ITEMS:
        yield (
            f"{found.items} items are few: so short a review has a low reliability however good they are. "
            "Do not rank people by it."
        )
    if found.alpha is not None and found.alpha.interval.high - found.alpha.interval.low > WIDE:
        low, high = found.alpha.interval.low, found.alpha.interval.high
        yield f"Reliability is known only roughly: it may be anything from {_signed(low)} to {_signed(high)}."
    if found.people < found.everybody:
        yield (
            f"{found.people} of {found.everybody} people answered every item. Reliability and Rasch's scale "
            "are of these; who came late or missed a round is in the items' own numbers."
        )


def _of_scale(report: ReviewReport) -> Iterator[str]:
    if report.scale is not None and report.scale.is_blurred:
        mean = sum(one.conditional.error for one in report.scale.items) / len(report.scale.items)
        yield (
            f"Rasch's difficulties are off by about {mean:.1f} logits, more than they differ among "
            "themselves: this class cannot tell which of the items are harder."
        )


def _signed(value: float) -> str:
    return f"{value:.2f}".replace("-", "\N{MINUS SIGN}")


def _people(number: int) -> str:
    return "1 person" if number == 1 else f"{number} people"
