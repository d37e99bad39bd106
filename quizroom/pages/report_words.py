"""Numbers and findings of a report as people read them."""

from collections.abc import Iterator
from datetime import datetime

from quizroom.analysis.attendance import Attendance
from quizroom.analysis.intervals import Interval
from quizroom.analysis.review_report import ReviewReport

NOTHING = "–"
"""Stands where nothing can be computed."""
FAMILY_WORDS = {
    "joint": "joint crossed",
    "two_step": "two steps",
    "look_alike": "look-alike",
    "own": "own item",
}
FORMAT_WORDS = {
    "one_best": "one best answer",
    "pick_n": "pick several",
    "typed": "typed",
    "free_list": "typed list",
    "ordering": "put in order",
    "matching": "match rows",
}
DESERVED = {1: (0.0, 2 / 3), 2: (2 / 3, 4 / 5), 3: (4 / 5, 1.0)}
"""Between which shares right a certainty earns most (Gardner-Medwin's mark table)."""
SCALE_ENDS = 4.0
"""Logits to either side that the map of the scale shows; what is further off stands at its end."""


def percent(share: float | None) -> str:
    """A share of 0 to 1 as whole percent."""
    return NOTHING if share is None else f"{_signed(100 * share, 0)} %"


def points(change: float) -> str:
    """How far a share has gone up or down, in points of a hundred."""
    return f"{'+' if round(100 * change) > 0 else ''}{_signed(100 * change, 0)} points"


def percent_range(interval: Interval) -> str:
    """An interval of shares."""
    return f"{round(100 * interval.low)}–{round(100 * interval.high)} %"


def decimal(value: float | None, places: int = 2) -> str:
    """A number with a real minus sign."""
    return NOTHING if value is None else _signed(value, places)


def decimal_range(interval: Interval | None) -> str:
    """An interval of such numbers."""
    return NOTHING if interval is None else f"{_signed(interval.low, 2)} to {_signed(interval.high, 2)}"


def counted(number: int, thing: str, things: str = "") -> str:
    """1 person, 2 people."""
    return f"{number} {thing if number == 1 else things or thing + 's'}"


def family_word(family: str) -> str:
    """The family's heading as anatomists say it."""
    return FAMILY_WORDS.get(family, family.replace("_", " "))


def day(at: datetime | None) -> str:
    """A date without figures that could be read two ways: 3 September 2031."""
    return "" if at is None else f"{at.day} {at:%B %Y}"


def place_on_scale(logits: float) -> str:
    """Where a value lies on the map of the scale, as a percentage of its width."""
    return f"{100 * (min(max(logits, -SCALE_ENDS), SCALE_ENDS) + SCALE_ENDS) / (2 * SCALE_ENDS):.1f}%"


def width(share: float) -> str:
    """A share as a length in a drawing."""
    return f"{100 * min(max(share, 0.0), 1.0):.1f}%"


def presence_words(one: Attendance) -> str:
    """In which rounds somebody was not there, or there without an answer."""
    if not one.answered:
        return "no answer at all"
    silent = [str(number) for number, found in enumerate(one.rounds, 1) if found == "silent"]
    before = one.rounds.count("before")
    said = [f"came at round {before + 1}"] if before else []
    if silent:
        said.append(f"no answer in {', '.join(silent)}")
    return "; ".join(said) or "all rounds"


def deserved(certainty: int, right: float) -> str:
    """Whether a certainty was worth saying, given the share of answers that were right."""
    low, high = DESERVED[certainty]
    if right < low:
        return "too certain"
    return "not certain enough" if right > high else "yes"


def in_short(report: ReviewReport) -> tuple[str, ...]:
    """What a host should know first, in a few sentences."""
    return (*_how_it_went(report), *_what_to_look_at(report), *_how_far_to_trust(report))


def _how_it_went(report: ReviewReport) -> Iterator[str]:
    if not report.marks.answers:
        return
    yield f"The class has {percent(report.marks.mean)} of the marks of what it answered."
    hardest = min(report.sheets, key=lambda one: _or_most(one.numbers.difficulty))
    yield f"Hardest: round {hardest.round}, with {percent(hardest.numbers.difficulty)}."
    if report.struck:
        rounds = ", ".join(map(str, report.struck))
        yield f"Left out because struck: {'round' if len(report.struck) == 1 else 'rounds'} {rounds}."


def _what_to_look_at(report: ReviewReport) -> Iterator[str]:
    suspect = [str(sheet.round) for sheet in report.sheets if sheet.numbers.verdict == "suspect key"]
    if suspect:
        yield (
            f"Look at the key of round {', '.join(suspect)}: the stronger part of the class did worse there "
            "than the weaker."
        )


def _how_far_to_trust(report: ReviewReport) -> Iterator[str]:
    found = report.reliability
    if found is not None and found.alpha is not None and found.error is not None:
        yield (
            f"Reliability is {decimal(found.alpha.value)}; a total of {found.items} is off by about "
            f"{decimal(found.error, 1)} marks either way."
        )


def _or_most(difficulty: float | None) -> float:
    return 2.0 if difficulty is None else difficulty


def _signed(value: float, places: int) -> str:
    text = f"{abs(value):.{places}f}"
    is_below = value < 0 and float(text) != 0
    return f"\N{MINUS SIGN}{text}" if is_below else text
