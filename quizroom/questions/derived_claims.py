"""Claims that no single row of the content states: joints crossed, segments, compartments, meanings."""

from collections.abc import Iterator

from quizroom.knowledge.anatomy import joints_crossed, joints_possibly_crossed
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.course import keyed
from quizroom.knowledge.facts import WHOLE, Fact, row_fact, rows_of
from quizroom.knowledge.model import Course, Muscle
from quizroom.knowledge.segments import in_order
from quizroom.questions.claim import Claim
from quizroom.questions.words import plain_meaning

_MOST_MAIN = 2
"""A muscle with more main segments than these has no chief one."""


def crossing_claims(catalogue: Catalogue) -> Iterator[Claim]:
    """The joints that muscles and their parts cross, and those on any other way."""
    for muscle in catalogue.muscles.values():
        yield from _crossings(catalogue, muscle)


def root_claims(catalogue: Catalogue, course: Course) -> Iterator[Claim]:
    """The spinal segments of every nerve fact: the main ones are the standard account."""
    for muscle in catalogue.muscles.values():
        rows = [(row_fact(muscle.id, "nerve", row), row) for row in muscle.nerves]
        for fact, row in rows:
            together = {
                segment
                for other, beside in rows
                if keyed(course, other) and (not row.part or beside.part in ("", row.part))
                for segment in beside.main
            }
            main = row.main if keyed(course, fact) and len(together) <= _MOST_MAIN else ()
            for segment in in_order((*row.roots, *row.main)):
                yield _root_claim(fact, segment, is_main=segment in main)


def _root_claim(fact: Fact, segment: str, *, is_main: bool) -> Claim:
    return Claim(
        muscle=fact.muscle,
        part=fact.part,
        value=segment,
        certain=is_main,
        usual=is_main,
        accepted=is_main,
        facts=(fact.id,),
        sources=fact.sources,
        id=f"{fact.muscle}/root/{fact.part or WHOLE}/{segment}",
    )


def meaning_claims(catalogue: Catalogue) -> Iterator[Claim]:
    """What names mean. The value is the id of the first muscle whose name means the same."""
    first: dict[str, str] = {}
    for muscle in catalogue.muscles.values():
        fact = f"{muscle.id}/meaning/{WHOLE}/{WHOLE}"
        yield Claim(
            muscle=muscle.id,
            part="",
            value=first.setdefault(plain_meaning(muscle), muscle.id),
            certain=True,
            usual=True,
            accepted=True,
            facts=(fact,),
            sources=muscle.sources,
            id=fact,
        )


def is_contested(muscle: Muscle) -> bool:
    """Whether books differ on the compartment of a muscle."""
    return any(row.about == "compartment" for row in muscle.differ)


def contested_compartments(catalogue: Catalogue) -> Iterator[Claim]:
    """A muscle whose compartment is contested may belong to any of its region and the next ones."""
    regions = sorted(catalogue.regions.values(), key=lambda region: region.order)
    place = {region.id: number for number, region in enumerate(regions)}
    for muscle in filter(is_contested, catalogue.muscles.values()):
        for compartment in catalogue.compartments.values():
            if abs(place[compartment.region] - place[muscle.region]) <= 1:
                yield Claim(
                    muscle=muscle.id,
                    part="",
                    value=compartment.id,
                    certain=False,
                    usual=False,
                    accepted=False,
                    facts=(),
                    sources=muscle.sources,
                )


def _crossings(catalogue: Catalogue, muscle: Muscle) -> Iterator[Claim]:
    for part in [one.id for one in muscle.parts] or [""]:
        crossed = joints_crossed(catalogue, muscle.id, part)
        facts = _core_attachments(muscle, part)
        for joint in joints_possibly_crossed(catalogue, muscle.id, part):
            yield Claim(
                muscle=muscle.id,
                part=part,
                value=joint,
                certain=joint in crossed,
                usual=joint in crossed,
                accepted=joint in crossed,
                facts=tuple(fact.id for fact in facts),
                sources=tuple(dict.fromkeys(source for fact in facts for source in fact.sources)),
                id=f"{muscle.id}/crossing/{part or WHOLE}/{joint}",
            )


def _core_attachments(muscle: Muscle, part: str) -> list[Fact]:
    facts = (
        row_fact(muscle.id, kind, row)
        for kind, _, row in rows_of(muscle)
        if kind in ("origin", "insertion") and row.part in ("", part)
    )
    return [fact for fact in facts if fact.status == "core"]
