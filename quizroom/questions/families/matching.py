"""Matching: one theme, several rows, one list of options; each row has exactly one right option."""

from collections.abc import Iterator, Sequence

from quizroom.questions.ask import Ask
from quizroom.questions.cues import clangs
from quizroom.questions.ends import asks_of_end
from quizroom.questions.families.action import action_asks
from quizroom.questions.families.artery import artery_asks
from quizroom.questions.families.nerve import nerve_asks
from quizroom.questions.places import place_asks
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.themes import THEMES, Theme, join_rows, row_text, theme_ask
from quizroom.questions.words import concept_text

FEWEST, MOST = 3, 4


def matching_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """For each theme that the course examines, its rows by threes and fours."""
    for theme in THEMES:
        if theme.family in syllabus.course.families:
            rows = [ask for ask in _asks(syllabus, theme) if _is_row(syllabus, theme, ask)]
            yield from _matchings(syllabus, theme, rows)


def _asks(syllabus: Syllabus, theme: Theme) -> Iterator[Ask]:
    match theme.family:
        case "origin" | "insertion":
            yield from asks_of_end(syllabus, theme.family)
        case "nerve":
            yield from nerve_asks(syllabus)
        case "artery":
            yield from artery_asks(syllabus)
        case "action":
            yield from action_asks(syllabus)
        case _:
            yield from place_asks(syllabus)


def _is_row(syllabus: Syllabus, theme: Theme, ask: Ask) -> bool:
    """Whether it belongs to the theme, and its key does not echo it."""
    if (ask.direction, ask.kind) != (theme.direction, theme.kind) or len(ask.key) != 1:
        return False
    key = concept_text(syllabus.words, ask.kind, ask.key[0])
    return not clangs(syllabus.stems(row_text(syllabus, ask)), syllabus.stems(key))


def _matchings(syllabus: Syllabus, theme: Theme, rows: Sequence[Ask]) -> Iterator[Ask]:
    """Matchings of which no two rest on the same fact, so that all may be dealt in one review."""
    left = list(rows)
    while left:
        joined = join_rows(syllabus, left, MOST)
        if len(joined) < FEWEST:
            del left[0]
            continue
        used = {fact for row in joined for fact in row.facts}
        left = [row for row in left if used.isdisjoint(row.facts)]
        yield theme_ask(syllabus, theme, joined)
