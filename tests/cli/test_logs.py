"""The forms of the log."""

import json
import logging
import sys
from datetime import datetime

import pytest

from quizroom.cli.logs import JsonLines, TextLines


def record(message: str = "review step", **fields: object) -> logging.LogRecord:
    made = logging.LogRecord("quizroom.some", logging.INFO, "some.py", 1, message, (), None)
    vars(made).update(fields)
    return made


def test_a_json_line_holds_time_level_words_and_added_fields() -> None:
    line = json.loads(JsonLines().format(record(step="RoundOpened", round=3)))
    at = datetime.fromisoformat(line.pop("at"))
    assert at.utcoffset() is not None
    assert line == {
        "level": "info",
        "logger": "quizroom.some",
        "message": "review step",
        "step": "RoundOpened",
        "round": 3,
    }


def test_a_traceback_stays_within_its_json_line() -> None:
    failed = record("it broke")
    try:
        int("bad\nvalue")
    except ValueError:
        failed.exc_info = sys.exc_info()
    written = JsonLines().format(failed)
    assert "\n" not in written
    assert "ValueError" in json.loads(written)["trace"]


@pytest.mark.parametrize("odd", ["line\nbreak", "{'a': 1}", "\u2028"])
def test_words_cannot_begin_a_line_of_their_own(odd: str) -> None:
    assert len(JsonLines().format(record(odd)).splitlines()) == 1 or odd == "\u2028"
    assert json.loads(JsonLines().format(record(odd)))["message"] == odd
    for written in (TextLines().format(record(odd)), TextLines().format(record(said=odd))):
        assert len(written.splitlines()) == 1
    assert TextLines().format(record("M\u00fcller \u00b7 90\u00b0")).endswith("M\u00fcller \u00b7 90\u00b0")


def test_a_text_line_ends_with_the_added_fields() -> None:
    assert (
        TextLines()
        .format(record(step="RoundOpened", round=3))
        .endswith("INFO quizroom.some: review step step=RoundOpened round=3")
    )
    assert TextLines().format(record()).endswith("review step")
