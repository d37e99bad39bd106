"""What is wrong in a content file: where, which rule, and what to do about it."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One mistake, written for whoever edits the content.

    `file` is relative to the content folder, `key` the path inside it (`actions[2].joint`),
    `subject` the fact id or id that a listed exception would name.
    """

    rule: str
    file: str
    message: str
    remedy: str
    key: str = ""
    subject: str = ""
    line: int | None = None
