"""How the log is written: lines for people, or a JSON object a line for machines."""

import logging
from datetime import UTC, datetime
from typing import Literal

import orjson

LogFormat = Literal["text", "json"]

QUIET = ("engineio.server", "socketio.server")
"""Loggers of libraries that would write a second time, past our form, unless they have a level."""

USUAL = frozenset(vars(logging.makeLogRecord({}))) | {"message", "asctime", "taskName"}
"""What every log record has; the rest are the fields that its author added."""


class JsonLines(logging.Formatter):
    """One JSON object a line: `at` (RFC 3339, UTC), `level`, `logger`, `message`, and the fields added."""

    def format(self, record: logging.LogRecord) -> str:
        """The line; a traceback goes into `trace`."""
        line = {
            "at": datetime.fromtimestamp(record.created, UTC).isoformat(timespec="milliseconds"),
            "level": record.levelname.lower(),
            "logger": record.name,
            "message": record.getMessage(),
            **added_fields(record),
        }
        if record.exc_info:
            line["trace"] = self.formatException(record.exc_info)
        return orjson.dumps(line, default=str).decode()


class TextLines(logging.Formatter):
    """Time, level, logger, message, and the fields added as `name=value`."""

    def __init__(self) -> None:
        """Begin with the usual columns."""
        super().__init__("%(asctime)s %(levelname)s %(name)s: %(message)s")

    def formatMessage(self, record: logging.LogRecord) -> str:  # noqa: N802 - the name is the library's
        """The line without its traceback."""
        fields = " ".join(f"{name}={value}" for name, value in added_fields(record).items())
        line = super().formatMessage(record)
        return in_one_line(f"{line} {fields}" if fields else line)


def added_fields(record: logging.LogRecord) -> dict[str, object]:
    """The fields that came with `extra`."""
    return {name: value for name, value in vars(record).items() if name not in USUAL}


def in_one_line(text: str) -> str:
    """The text with what cannot be seen written out: nobody's words may begin a line of their own."""
    if text.isprintable():
        return text
    return "".join(one if one.isprintable() else ascii(one)[1:-1] for one in text)


def set_up_log(kind: LogFormat) -> None:
    """Send the log to standard error in this form."""
    handler = logging.StreamHandler()
    handler.setFormatter(JsonLines() if kind == "json" else TextLines())
    logging.basicConfig(level=logging.INFO, handlers=[handler], force=True)
    for name in QUIET:
        logging.getLogger(name).setLevel(logging.ERROR)
