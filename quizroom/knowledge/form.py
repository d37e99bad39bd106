"""Mistakes of form in one entry, told in the words of the content files."""

from collections.abc import Mapping
from dataclasses import fields
from typing import Any

from quizroom.knowledge.finding import Finding
from quizroom.knowledge.model import (
    Action,
    Attachment,
    Blood,
    Difference,
    HouseRule,
    Ids,
    Name,
    Note,
    Part,
    Supply,
)
from quizroom.knowledge.raw_entries import RawEntry
from quizroom.knowledge.suggest import suggest

FORM = "entry_is_well_formed"
"""The rule that every finding of form belongs to."""

_ROWS: Mapping[str, type] = {
    "origins": Attachment,
    "insertions": Attachment,
    "actions": Action,
    "nerves": Supply,
    "arteries": Blood,
    "parts": Part,
    "names": Name,
    "notes": Note,
    "differ": Difference,
    "house_rules": HouseRule,
    "ids": Ids,
}
_WANTED = {
    "string_type": "text in quotes",
    "tuple_type": "a list in square brackets",
    "int_type": "a whole number",
    "bool_type": "true or false",
    "dataclass_type": "a table of keys",
}


def form_finding(raw: RawEntry, kind: type, problem: Mapping[str, Any]) -> Finding:
    """The finding for one problem that the validator reports (`type`, `loc`, `ctx`, `input`)."""
    steps = [step for step in problem["loc"][1:] if isinstance(step, (str, int))]
    message, remedy = _words(problem, _holder(kind, steps), str(steps[-1]) if steps else raw.id)
    return Finding(rule=FORM, file=raw.file, key=_key(raw.key, steps), message=message, remedy=remedy)


def _words(problem: Mapping[str, Any], holder: type, name: str) -> tuple[str, str]:
    match problem["type"]:
        case "missing":
            return f"`{name}` is missing", f"add `{name}`"
        case "unexpected_keyword_argument":
            known = [one.name for one in fields(holder) if one.name != "id"]
            return (
                f"`{name}` is not a key that is known here",
                f"{suggest(name, known)} (known: {', '.join(known)})",
            )
        case "literal_error":
            expected = problem["ctx"]["expected"]
            return f"`{name}` is {problem['input']!r}", f"write one of {expected}"
        case kind:
            wanted = _WANTED.get(kind, str(problem["msg"]))
            return f"`{name}` is {problem['input']!r}", f"write {wanted}"


def _holder(kind: type, steps: list[str | int]) -> type:
    """The class whose field the last step names."""
    rows = (_ROWS[step] for step in steps[:-1] if isinstance(step, str) and step in _ROWS)
    return next(rows, kind)


def _key(start: str, steps: list[str | int]) -> str:
    key = start
    for step in steps:
        key += f"[{step}]" if isinstance(step, int) else f".{step}"
    return key.removeprefix(".")
