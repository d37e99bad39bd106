"""A player's history as files to take away: JSON with everything, CSV with one answer a row."""

import base64
import zlib
from collections.abc import Iterator
from datetime import datetime
from itertools import chain
from typing import Any

import orjson

from quizroom.exchange.csv_files import csv_file
from quizroom.service.histories import History
from quizroom.views.history import PastReview, PastRound

FORMAT = "quizroom history"
VERSION = 1
ZLIB = b"\x78"
"""How compressed bytes begin (RFC 1950: deflate, window of 32 KiB); no JSON does."""
COLUMNS = (
    *("review", "course", "handle", "round", "opened_at", "answered_at", "family", "format"),
    *("stem", "options", "answer", "key", "verdict", "mark"),
    *("second_answer", "second_verdict", "flagged", "flag_words"),
    *("time_factor", "always_took_time", "took_time"),
)
NOT_TOLD = "not told yet"
"""The verdict of a round that is open or whose result is held."""


def history_json(history: History, now: datetime) -> bytes:
    """Everything that is kept of a player (RFC 8259); times by RFC 3339."""
    return orjson.dumps(
        {
            "format": FORMAT,
            "version": VERSION,
            "written_at": now,
            "player": history.player,
            "reviews": history.reviews,
            "kept": history.kept,
        },
        default=_plain,
        option=orjson.OPT_INDENT_2 | orjson.OPT_UTC_Z,
    )


def history_csv(history: History) -> bytes:
    """One row for each round of a review, and each look; no mark is not a mark of 0.

    Of a round whose result is not told yet there is a row where the player left something, without its key.
    """
    rows = (row for review in history.reviews for row in _rows(review))
    return csv_file(COLUMNS, chain(rows, _looks(history)), bom=True)


def _rows(review: PastReview) -> Iterator[tuple[str, ...]]:
    for past in sorted((*review.rounds, *review.untold), key=lambda one: one.round):
        yield (
            *(review.title, review.course, review.handle, str(past.round)),
            *(past.opened_at.isoformat(), "" if past.answered_at is None else past.answered_at.isoformat()),
            *(past.family, past.format, _stem(past)),
            *(" | ".join(past.options), " | ".join(past.answer), " | ".join(past.key)),
            *(past.verdict or NOT_TOLD, "" if past.mark is None else f"{past.mark:g}"),
            *(" | ".join(past.second), past.second_verdict or ""),
            *("yes" if past.flagged else "", past.flag_words),
            *(f"{review.time_factor:g}", "yes" if review.always_took_time else "", str(past.took_time)),
        )


def _looks(history: History) -> Iterator[tuple[str, ...]]:
    """What was asked of the player alone. Marks of looks are not kept: they follow from key and answer."""
    answers = {row["look"]: _read(row["body"]) for row in history.kept.get("look_answers", ())}
    looks = sorted(history.kept.get("looks", ()), key=lambda row: (str(row["made_at"]), str(row["place"])))
    for row in looks:
        look, said = _read(row["body"]), answers.get(row["id"], {})
        item = look["item"]
        given = (*said.get("choice", ()), *said.get("typed", ()))
        yield (
            *("second look", look["course"], "", str(look["place"])),
            *(str(look["made_at"]), str(said.get("answered_at", ""))),
            *(item["family"], item["format"]),
            " | ".join((item["stem"], *(stem["text"] for stem in item["stems"]))),
            " | ".join(f"{option['letter']}: {option['text']}" for option in item["options"]),
            " | ".join(given),
            " | ".join(item["key"] or [accepted["text"] for accepted in item["accepted"]]),
            *("",) * (len(COLUMNS) - COLUMNS.index("verdict")),
        )


def _read(body: object) -> dict[str, Any]:
    """What the bytes of a look or of an answer hold."""
    read: Any = _plain(body)
    return read if isinstance(read, dict) else {}


def _stem(past: PastRound) -> str:
    return " | ".join((past.stem, *past.stems))


def _plain(value: object) -> object:
    """What JSON has no word for: bytes of a table, as what they hold if that is JSON, compressed or not."""
    if not isinstance(value, bytes):
        raise TypeError(type(value).__name__)
    try:
        return orjson.loads(zlib.decompress(value) if value.startswith(ZLIB) else value)
    except (orjson.JSONDecodeError, zlib.error):
        return base64.b64encode(value).decode("ascii")
