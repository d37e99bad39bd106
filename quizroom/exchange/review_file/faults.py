"""What is wrong with a file, told by the place in it; and the doubts that come before anything is read."""

import re
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import islice
from typing import Any

import orjson

LARGEST_FILE = 40_000_000
"""Bytes."""
DEEPEST = 24
"""Levels of lists and objects; the deepest that this program writes has fewer than half."""
MOST_VALUES = 3_000_000
"""More than the longest review has: 200 000 steps of a dozen values."""
LONGEST_TEXT = 4000
LARGEST_NUMBER = 2**53
"""Beyond it numbers of JSON are not the same everywhere (RFC 8259, section 6)."""
MOST_TOLD = 20
UNSEEN = re.compile(r"[\x00-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]")
"""Controls, and turns of direction that could scramble a line of the wall."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fault:
    """One thing that is wrong: where in the file, and what."""

    path: str
    text: str


class BadReviewFile(Exception):
    """The file cannot be taken; nothing of it was. `faults` are the first of what is wrong."""

    def __init__(self, faults: tuple[Fault, ...]) -> None:
        """Keep the first of them."""
        super().__init__("; ".join(f"{one.path}: {one.text}" for one in faults[:MOST_TOLD]))
        self.faults = faults[:MOST_TOLD]


def parsed(body: bytes) -> Any:
    """The JSON of a file, once it is plain, not too large, and not too deep.

    Raises:
        BadReviewFile: with all places at fault.
    """
    if len(body) > LARGEST_FILE:
        raise BadReviewFile((Fault(path="file", text=f"It has more than {LARGEST_FILE // 1_000_000} MB."),))
    try:
        read = orjson.loads(body)
    except orjson.JSONDecodeError as error:
        raise BadReviewFile((Fault(path="file", text=f"It is no JSON: {error}."),)) from error
    faults = tuple(islice(_faults_in(read), MOST_TOLD))
    if faults:
        raise BadReviewFile(faults)
    return read


def _faults_in(read: Any) -> Iterator[Fault]:
    """Whatever no file of ours would hold. A stack instead of recursion: depth is what is in doubt.

    One value after the other: a list of millions would take many times its own memory if it were laid out.
    """
    values, open_parts = 0, [iter((("", read),))]
    while open_parts:
        found = next(open_parts[-1], None)
        if found is None:
            open_parts.pop()
            continue
        path, part = found
        values += 1
        if values > MOST_VALUES:
            yield Fault(path="file", text=f"It holds more than {MOST_VALUES} values, as no review does.")
            return
        if isinstance(part, dict | list):
            if len(open_parts) > DEEPEST:
                yield Fault(path=path, text="It is nested too deeply.")
            else:
                open_parts.append(_inside(path, part))
        elif isinstance(part, str):
            yield from _faults_of_text(path, part)
        elif isinstance(part, int) and abs(part) >= LARGEST_NUMBER:
            yield Fault(path=path, text="This number is too large.")


def _inside(path: str, part: dict[str, Any] | list[Any]) -> Iterator[tuple[str, Any]]:
    named = part.items() if isinstance(part, dict) else ((str(place), one) for place, one in enumerate(part))
    return ((_within(path, name), value) for name, value in named)


def _faults_of_text(path: str, text: str) -> Iterator[Fault]:
    is_picture = path.startswith("pictures.") and path.endswith(".body")
    if not is_picture and len(text) > LONGEST_TEXT:
        yield Fault(path=path, text=f"A text has at most {LONGEST_TEXT} characters; this has {len(text)}.")
    elif not is_picture and UNSEEN.search(text):
        yield Fault(path=path, text="A text holds no control characters and no turns of direction.")


def _within(path: str, name: str) -> str:
    return f"{path}.{name[:60]}" if path else name[:60]
