"""Every row of every outside table, held against the content.

A row agrees, disagrees, or cannot be compared (its words are too coarse or name what we do not
model). Agreement means that what the row says is recorded, with any status. A disagreement must
stand in allowed.toml with the reason and a second source, and only as long as it is one.
"""

import tomllib
from collections.abc import Callable, Iterator, Mapping
from dataclasses import replace
from functools import cache
from typing import Any, NamedTuple

from quizroom.knowledge.catalogue import Catalogue, build_catalogue
from quizroom.knowledge.load import content_folder, load_content
from quizroom.knowledge.model import Muscle
from tests.reference.labels import judge_artery, judge_compartment, judge_id, judge_name, judge_nerve
from tests.reference.models import judge_body, judge_joint, judge_sign
from tests.reference.motions import judge_action
from tests.reference.places import judge_attachment
from tests.reference.rows import DOUBTED, FOLDER, TABLES, Row, rows_of
from tests.reference.verdicts import Aspect, Judgement, Verdict

Judge = Callable[[Catalogue, Row], Iterator[Judgement]]
OF_BOOKS: Mapping[str, Judge] = {
    "origin": judge_attachment,
    "insertion": judge_attachment,
    "attachment": judge_attachment,
    "action": judge_action,
    "nerve": judge_nerve,
    "artery": judge_artery,
    "compartment": judge_compartment,
    "uberon_id": judge_id,
    "fma_id": judge_id,
    "latin": judge_name,
    "synonym": judge_name,
}
OF_MODELS: Mapping[str, Judge] = {
    "attachment": judge_body,
    "joint_crossed": judge_joint,
    "action": judge_sign,
}
JUDGES = {
    "openstax_ap2e": OF_BOOKS,
    "uberon": OF_BOOKS,
    "myosim_moment_arms": OF_MODELS,
    "opensim_neck": OF_MODELS,
}

VOCABULARY = ("bones", "landmarks", "joints", "movements", "nerves", "arteries", "compartments")


class Case(NamedTuple):
    """What makes a comparison findable in allowed.toml."""

    table: str
    muscle: str
    part: str
    aspect: Aspect
    value: str


class Comparison(NamedTuple):
    """One row on one aspect; a row that names a bone and a landmark makes two."""

    table: str
    row: Row
    aspect: Aspect
    verdict: Verdict

    @property
    def case(self) -> Case:
        """Its key in allowed.toml."""
        return Case(self.table, self.row.muscle, self.row.part, self.aspect, self.row.value)


class Allowance(NamedTuple):
    """Why the content does not follow a row, and who bears it out."""

    reason: str
    second_source: str


@cache
def content() -> Catalogue:
    """The content that comes with the program."""
    catalogue = load_content(content_folder()).catalogue
    assert catalogue is not None
    return catalogue


@cache
def comparisons(catalogue: Catalogue) -> tuple[Comparison, ...]:
    """All rows about muscles of the catalogue, on every aspect that they say something about."""
    return tuple(
        Comparison(table, row, aspect, "left out" if DOUBTED in row.note else verdict)
        for table in TABLES
        for row in rows_of(table)
        for aspect, verdict in JUDGES[table][row.fact_type](catalogue, row)
    )


def core_only(catalogue: Catalogue) -> Catalogue:
    """The catalogue without the readings on which books differ."""
    muscles = (_core_of(muscle) for muscle in catalogue.muscles.values())
    return build_catalogue(
        **{table: getattr(catalogue, table).values() for table in VOCABULARY}, muscles=muscles
    )


def _core_of(muscle: Muscle) -> Muscle:
    tables = ("origins", "insertions", "actions", "nerves", "arteries")
    core: dict[str, Any] = {
        table: tuple(row for row in getattr(muscle, table) if row.status == "core") for table in tables
    }
    return replace(muscle, **core)


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
