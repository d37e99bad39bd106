"""Wrong spinal segments: those of look-alikes, of the compartment, of sibling nerves, and the next ones."""

from collections.abc import Iterable, Iterator, Sequence
from random import Random

from quizroom.knowledge.segments import SEGMENTS
from quizroom.questions.ask import Ask
from quizroom.questions.choose import PREFERRED_WRONG, is_fair, wrong_options
from quizroom.questions.distractors import candidates
from quizroom.questions.ranks import Candidate, Rank
from quizroom.questions.syllabus import Syllabus, usual_values

_FURTHEST = 4
"""Segments further away than these are no error that anybody makes."""


def segment_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a segment, none of them far from the key."""
    near = _near(ask.key[0])
    for source, segments in _ranks(syllabus, ask):
        yield source, tuple(one for one in segments if one in near)
    yield "neighbouring_segment", near


def segments_around(syllabus: Syllabus, ask: Ask, random: Random) -> Sequence[Candidate] | None:
    """Wrong segments on both sides of the key, so many below it as chance says, but not all on one side.

    Segments stand in their order, so that the choice alone decides where the key stands. Three thoracic ones
    beside C8 would leave it the only one that reaches the arm.
    """
    place = SEGMENTS.index(ask.key[0])
    found = candidates(syllabus, ask, random)
    below = [one for one in found if SEGMENTS.index(one[0]) < place]
    above = [one for one in found if SEGMENTS.index(one[0]) > place]
    fewest, most = min(1, len(below)), PREFERRED_WRONG - min(1, len(above))
    wanted = max(random.randint(fewest, most), PREFERRED_WRONG - len(above))
    chosen = [*below[:wanted], *above[: PREFERRED_WRONG - len(below[:wanted])]]
    if len(chosen) == PREFERRED_WRONG and is_fair(syllabus, ask, chosen):
        return chosen
    return wrong_options(syllabus, ask, random)


def _ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    kinship = syllabus.kinship
    muscle = syllabus.catalogue.muscles[ask.muscles[0]]
    yield "look_alike", usual_values(syllabus, "root", kinship.lookalikes.get(muscle.id, ()))
    yield "same_compartment", usual_values(syllabus, "root", kinship.by_compartment[muscle.compartment])
    siblings = kinship.siblings_of_nerves(muscle)
    yield "sibling_nerve", tuple(_roots_of(syllabus, siblings))
    own = set(_roots_of(syllabus, (row.nerve for row in muscle.nerves)))
    nerves = syllabus.catalogue.nerves.values()
    sharing = (nerve.id for nerve in nerves if nerve.kind == "nerve" and own & set(nerve.roots))
    yield "sibling_nerve", tuple(_roots_of(syllabus, sharing))


def _roots_of(syllabus: Syllabus, nerves: Iterable[str]) -> Iterator[str]:
    for nerve in nerves:
        yield from syllabus.catalogue.nerves[nerve].roots


def _near(segment: str) -> tuple[str, ...]:
    """The segments around one, the nearest first."""
    place = SEGMENTS.index(segment)
    around = sorted(SEGMENTS, key=lambda one: abs(SEGMENTS.index(one) - place))
    return tuple(one for one in around if abs(SEGMENTS.index(one) - place) <= _FURTHEST)
