"""A course list laid over the catalogue: what may be asked, in which words, and what may be true."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from functools import cache, lru_cache

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.compose import record_of
from quizroom.knowledge.model import Course
from quizroom.knowledge.record import Record
from quizroom.questions.claim import Claim, ClaimTable, Relation
from quizroom.questions.claims import claim_tables
from quizroom.questions.cues import Stems, stems_of
from quizroom.questions.injuries import Injuries
from quizroom.questions.kinship import Kinship, joints_by_distance
from quizroom.questions.near import Vocabulary, vocabulary_of
from quizroom.questions.traits import Traits, traits_of
from quizroom.questions.words import Words, words_of


@dataclass(frozen=True, slots=True, kw_only=True, eq=False)
class Syllabus:
    """Everything that questions are made from, prepared once for a course."""

    catalogue: Catalogue
    course: Course
    muscles: tuple[str, ...]
    """The muscles on the list that the catalogue knows, in the order of the list."""
    on_list: frozenset[str]
    tables: Mapping[Relation, ClaimTable]
    words: Words
    kinship: Kinship
    injuries: Injuries
    traits: Callable[[str], Traits]
    vocabulary: Callable[[], Vocabulary]
    stems: Callable[[str], Stems]
    joints_nearby: Callable[[str], tuple[str, ...]]
    """Joints of the same limb, or of the trunk, at which muscles act: the nearest first, itself included."""
    record: Callable[[str], Record]


@dataclass(frozen=True, slots=True, order=True)
class Unit:
    """What is asked as one entry: a muscle, or a part of one (`part` is empty for the whole)."""

    muscle: str
    part: str = ""

    @property
    def id(self) -> str:
        """The muscle's id, or `muscle/part`."""
        return f"{self.muscle}/{self.part}" if self.part else self.muscle


@lru_cache(maxsize=8)
def syllabus_of(catalogue: Catalogue, course: Course) -> Syllabus:
    """Lay a course list over the catalogue; remembered, since a host deals from the same list again."""
    muscles = tuple(muscle for muscle in course.muscles if muscle in catalogue.muscles)
    tables = claim_tables(catalogue, course)
    actions = tables["action"].by_value.items()
    acting = {value.partition(".")[0] for value, claims in actions if any(claim.usual for claim in claims)}
    return Syllabus(
        catalogue=catalogue,
        course=course,
        muscles=muscles,
        on_list=frozenset(muscles),
        tables=tables,
        words=words_of(catalogue, course),
        kinship=Kinship(catalogue=catalogue),
        injuries=Injuries(catalogue=catalogue, course=course),
        traits=cache(lambda muscle: traits_of(catalogue, tables, muscle)),
        vocabulary=cache(lambda: vocabulary_of(catalogue, course)),
        stems=cache(stems_of),
        joints_nearby=cache(lambda joint: joints_by_distance(catalogue, acting, joint)),
        record=cache(lambda muscle: record_of(catalogue, muscle)),
    )


def units(syllabus: Syllabus, relation: Relation) -> tuple[Unit, ...]:
    """The entries of the list for a relation: parts where the course separates them and they differ."""
    return tuple(unit for muscle in syllabus.muscles for unit in _entries(syllabus, relation, muscle))


def claims_of(syllabus: Syllabus, relation: Relation, unit: Unit) -> tuple[Claim, ...]:
    """The claims that hold for a unit: a part shares those of the whole, the whole has those of its parts."""
    claims = syllabus.tables[relation].by_muscle.get(unit.muscle, ())
    return tuple(claim for claim in claims if not unit.part or claim.part in ("", unit.part))


def certain_values(syllabus: Syllabus, relation: Relation, unit: Unit) -> tuple[str, ...]:
    """What may be asked of a unit, in the order of the content."""
    claims = claims_of(syllabus, relation, unit)
    return tuple(dict.fromkeys(claim.value for claim in claims if claim.certain))


def usual_values(syllabus: Syllabus, relation: Relation, muscles: Iterable[str]) -> tuple[str, ...]:
    """The standard values of several muscles, each once."""
    claims = syllabus.tables[relation].by_muscle
    values = (claim.value for muscle in muscles for claim in claims.get(muscle, ()) if claim.usual)
    return tuple(dict.fromkeys(values))


def certain_claims(syllabus: Syllabus, relation: Relation, unit: Unit, value: str) -> tuple[Claim, ...]:
    """The claims on which one value of a unit rests."""
    return tuple(
        claim for claim in claims_of(syllabus, relation, unit) if claim.value == value and claim.certain
    )


def values_not_wrong(syllabus: Syllabus, relation: Relation, unit: Unit) -> frozenset[str]:
    """All values that are true of the unit by any reading, with whatever overlaps them."""
    overlap = syllabus.tables[relation].overlap
    values = {claim.value for claim in claims_of(syllabus, relation, unit)}
    return frozenset[str]().union(*map(overlap, values))


def claims_reaching(syllabus: Syllabus, relation: Relation, value: str) -> tuple[Claim, ...]:
    """All claims, of muscles on the list or not, by which a muscle may count for the value."""
    table = syllabus.tables[relation]
    return tuple(claim for one in sorted(table.reach(value)) for claim in table.by_value.get(one, ()))


def muscles_not_wrong(syllabus: Syllabus, relation: Relation, value: str) -> frozenset[str]:
    """All muscles of which the value is true by any reading."""
    return frozenset(claim.muscle for claim in claims_reaching(syllabus, relation, value))


def _entries(syllabus: Syllabus, relation: Relation, muscle: str) -> tuple[Unit, ...]:
    claims = syllabus.tables[relation].by_muscle.get(muscle, ())
    parts = syllabus.catalogue.muscles[muscle].parts
    if muscle in syllabus.course.separate_parts and any(claim.part and claim.usual for claim in claims):
        return tuple(Unit(muscle, part.id) for part in parts)
    return (Unit(muscle),)
