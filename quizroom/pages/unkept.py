"""Answers that are for one person alone: no browser and no proxy keeps them."""

from typing import TypeVar

from flask import Response
from werkzeug.wrappers import Response as AnyResponse

Answer = TypeVar("Answer", bound=AnyResponse)


def unkept(answer: Answer) -> Answer:
    """The answer, which nobody may keep (RFC 9111, 5.2.2.5)."""
    answer.headers["Cache-Control"] = "no-store"
    return answer


def download(content: bytes, kind: str, name: str) -> Response:
    """A file of this media type, to be saved under this name."""
    answer = Response(content, content_type=kind)
    answer.headers["Content-Disposition"] = f'attachment; filename="{name}"'
    return unkept(answer)
