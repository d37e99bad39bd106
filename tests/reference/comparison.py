"""Every row of every outside table, held against the content.

A row agrees, disagrees, or cannot be compared (its words are too coarse or name what we do not
model). Agreement means that what the row says is recorded, with any status. A disagreement must
stand in allowed.toml with the reason and a second source, and only as long as it is one.
"""

from collections.abc import Callable, Iterator, Mapping
from functools import cache
from typing import NamedTuple

from quizroom.knowledge.catalogue import Catalogue
from tests.reference.labels import judge_compartment, judge_id, judge_name
from tests.reference.models import judge_body, judge_joint, judge_sign
from tests.reference.motions import judge_action
from tests.reference.places import judge_attachment
from tests.reference.rows import DOUBTED, TABLES, Row, rows_of
from tests.reference.supplies import judge_artery, judge_nerve
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


class Comparison(NamedTuple):
    """One row on one aspect; a row that names a bone and a landmark makes two."""

    table: str
    row: Row
    aspect: Aspect
    verdict: Verdict


@cache
def comparisons(catalogue: Catalogue) -> tuple[Comparison, ...]:
    """All rows about muscles of the catalogue, on every aspect that they say something about."""
    return tuple(
        Comparison(table, row, aspect, "left out" if DOUBTED in row.note else verdict)
        for table in TABLES
        for row in rows_of(table)
        for aspect, verdict in JUDGES[table][row.fact_type](catalogue, row)
    )
