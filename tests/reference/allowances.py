"""The rows that the content does not follow, each with its reason and a second source."""

import tomllib
from collections.abc import Mapping
from functools import cache
from typing import NamedTuple

from tests.reference.comparison import Comparison
from tests.reference.rows import FOLDER
from tests.reference.verdicts import Aspect


class Case(NamedTuple):
    """What makes a comparison findable in allowed.toml."""

    table: str
    muscle: str
    part: str
    aspect: Aspect
    value: str


class Allowance(NamedTuple):
    """Why the content does not follow a row, and who bears it out."""

    reason: str
    second_source: str


@cache
def allowances() -> Mapping[Case, Allowance]:
    """The listed disagreements."""
    entries = tomllib.loads((FOLDER / "allowed.toml").read_text("utf-8"))["allowed"]
    listed = {
        Case(one["table"], one["muscle"], one.get("part", ""), one["aspect"], one["value"]): Allowance(
            one["reason"], one["second_source"]
        )
        for one in entries
    }
    assert len(listed) == len(entries), "a case stands twice in allowed.toml"
    return listed


def case_of(comparison: Comparison) -> Case:
    """The key of a comparison in allowed.toml."""
    row = comparison.row
    return Case(comparison.table, row.muscle, row.part, comparison.aspect, row.value)
