"""Where wrong options come from, in order of how much they teach.

The order is the trade's: what classes really chose, look-alikes, neighbours of the same compartment or
bone, homologous bones, sibling nerves, antagonists, the same movement elsewhere, and last the same region.
What may be true by any reading is barred by the ask.
"""

from collections import Counter
from collections.abc import Iterable, Sequence
from functools import lru_cache
from random import Random

from quizroom.questions.ask import Ask
from quizroom.questions.claim import Relation
from quizroom.questions.model import DistractorSource
from quizroom.questions.ranks import Candidate, Rank, teaching_sources
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.wrong_landmarks import landmark_ranks
from quizroom.questions.wrong_movements import action_ranks, bone_ranks, joint_ranks, movement_ranks
from quizroom.questions.wrong_muscles import head_ranks, muscle_ranks
from quizroom.questions.wrong_vessels import artery_ranks, nerve_ranks

_MUSCLES = ("muscle", "head")
_OF_A_KIND = 2


def candidates(syllabus: Syllabus, ask: Ask, random: Random) -> list[Candidate]:
    """All wrong options for an ask, the most teaching first; within a rank by chance.

    Each candidate is false of what is asked by every recorded reading, and comes once. Muscles that
    are not on the list come last: a class that never met them is not tempted.
    """
    seen = {*ask.key, *ask.barred}
    known: list[Candidate] = []
    strangers: list[Candidate] = []
    for source, concepts in _all_ranks(syllabus, ask):
        fresh = [one for one in dict.fromkeys(concepts) if one not in seen]
        if not fresh:
            continue
        seen.update(fresh)
        random.shuffle(fresh)
        listed, others = _by_list(syllabus, ask, fresh)
        known += [(concept, source) for concept in listed]
        apart = strangers if ask.kind in _MUSCLES and source != "look_alike" else known
        apart += [(concept, source) for concept in others]
    return _errors_first(ask, [*_mixed(known, teaching_sources(ask.family)), *strangers])


def _errors_first(ask: Ask, ranked: list[Candidate]) -> list[Candidate]:
    """What classes took for the key before all others; only what is a wrong option by the other sources too.

    So no error is offered that is true by some reading, is of another kind, or is gone from the content.
    """
    if not ask.errors:
        return ranked
    offered = {concept for concept, _ in ranked}
    errors = [concept for concept in ask.errors if concept in offered]
    return [*((one, "class_error") for one in errors), *(one for one in ranked if one[0] not in errors)]


def _mixed(ranked: Sequence[Candidate], teaching: frozenset[DistractorSource]) -> list[Candidate]:
    """Not all from one source: beyond look-alikes a third of a kind waits for others that teach."""
    counted: Counter[DistractorSource] = Counter()
    groups: dict[tuple[bool, bool, bool], list[Candidate]] = {}
    for candidate in ranked:
        source = candidate[1]
        counted[source] += 1
        many = source != "look_alike" and counted[source] > _OF_A_KIND
        groups.setdefault((source == "same_region", source not in teaching, many), []).append(candidate)
    return [candidate for group in sorted(groups) for candidate in groups[group]]


def _all_ranks(syllabus: Syllabus, ask: Ask) -> Iterable[Rank]:
    yield "look_alike", ask.leads
    if ask.ranks is not None:
        yield from ask.ranks(syllabus, ask)
        return
    match ask.kind:
        case "landmark":
            yield from landmark_ranks(syllabus, ask)
        case "muscle":
            yield from muscle_ranks(syllabus, ask)
        case "head":
            yield from head_ranks(syllabus, ask)
        case "nerve":
            yield from nerve_ranks(syllabus, ask)
        case "artery":
            yield from artery_ranks(syllabus, ask)
        case "movement":
            yield from movement_ranks(syllabus, ask)
        case "action":
            yield from action_ranks(syllabus, ask)
        case "joint":
            yield from joint_ranks(syllabus, ask)
        case "bone":
            yield from bone_ranks(syllabus, ask)
        case "compartment":
            return


def _by_list(syllabus: Syllabus, ask: Ask, concepts: Sequence[str]) -> tuple[list[str], list[str]]:
    """Those on the course list (muscles), or with a part in it (other things), and those that are not."""
    if ask.kind in _MUSCLES:
        on_list = syllabus.on_list
        known = [one for one in concepts if one.partition("/")[0] in on_list]
    else:
        values = _listed_values(syllabus, ask.relation)
        known = [one for one in concepts if one in values]
    if len(known) == len(concepts):
        return known, []
    listed = set(known)
    return known, [one for one in concepts if one not in listed]


@lru_cache(maxsize=64)
def _listed_values(syllabus: Syllabus, relation: Relation) -> frozenset[str]:
    """What the standard account gives to muscles on the list."""
    by_muscle = syllabus.tables[relation].by_muscle
    claims = (claim for muscle in syllabus.on_list for claim in by_muscle.get(muscle, ()))
    return frozenset(claim.value for claim in claims if claim.usual)
