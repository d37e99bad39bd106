"""Where the wrong options of a course list come from, family by family."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Literal

from quizroom.questions.model import DistractorSource, Family, Item
from quizroom.questions.ranks import FIRST_SEVEN, teaching_sources
from quizroom.questions.rules import breaches


@dataclass(slots=True, kw_only=True)
class FamilyReport:
    """What one family yields. `sources` counts wrong options, `broken` rules of item writing.

    `taught` counts the wrong options from the first seven sources or one that is named for the family.
    """

    family: Family | Literal["all"]
    items: int = 0
    taught: int = 0
    sources: Counter[DistractorSource] = field(default_factory=Counter)
    broken: Counter[str] = field(default_factory=Counter)

    @property
    def first_seven(self) -> float:
        """Share of wrong options from the first seven sources; 1 where there are no options at all."""
        return self._share(sum(self.sources[source] for source in FIRST_SEVEN))

    @property
    def teaching(self) -> float:
        """The same with what the trade names for the family itself."""
        return self._share(self.taught)

    def _share(self, count: int) -> float:
        total = self.sources.total()
        return count / total if total else 1.0


def report_of(items: Iterable[Item]) -> tuple[FamilyReport, ...]:
    """One report for each family among the items, in the order in which they come."""
    reports: dict[Family, FamilyReport] = {}
    for item in items:
        report = reports.setdefault(item.family, FamilyReport(family=item.family))
        report.items += 1
        wrong = [option.source for option in item.options if option.source != "key"]
        report.sources.update(wrong)
        report.taught += sum(source in teaching_sources(item.family) for source in wrong)
        report.broken.update(rule for rule, _ in breaches(item))
    return tuple(reports.values())


def total_of(reports: Iterable[FamilyReport]) -> FamilyReport:
    """All reports as one."""
    total = FamilyReport(family="all")
    for report in reports:
        total.items += report.items
        total.taught += report.taught
        total.sources += report.sources
        total.broken += report.broken
    return total


def report_lines(reports: Iterable[FamilyReport]) -> Iterator[str]:
    """The reports as text: items, share of wrong options from the first seven sources, from these and what is
    named for the family, and all sources.
    """
    reports = tuple(reports)
    yield f"{'family':14}{'items':>7}{'wrong':>8}{'first 7':>9}{'teaching':>10}  sources"
    for report in reports:
        yield _line(report)
    if reports:
        total = total_of(reports)
        yield _line(total)
        yield f"Rules of item writing broken: {_counted(total.broken) or 'none'}."


def _line(report: FamilyReport) -> str:
    counts = f"{report.family:14}{report.items:7}{report.sources.total():8}"
    shares = f"{report.first_seven:9.1%}{report.teaching:10.1%}"
    return f"{counts}{shares}  {_counted(report.sources)}".rstrip()


def _counted(counter: Counter[str] | Counter[DistractorSource]) -> str:
    return ", ".join(f"{name} {times}" for name, times in counter.most_common())
