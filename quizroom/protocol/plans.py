"""From what is chosen for a review to its plan: by a host, or by a study group."""

from dataclasses import replace
from typing import cast

from quizroom.knowledge.model import Course
from quizroom.protocol.bench_messages import BenchChoice
from quizroom.protocol.blueprint import BlueprintChoice
from quizroom.protocol.desk_messages import PrepareReview
from quizroom.protocol.group_messages import OpenGroup
from quizroom.questions.blueprint import Blueprint, Cell
from quizroom.questions.model import FAMILIES, Family
from quizroom.questions.sharing import whole_rounds
from quizroom.room.bench_state import BenchRules
from quizroom.room.group_state import GroupRules
from quizroom.room.state import Plan
from quizroom.service.groups import GroupLimits


def plan_of_host(message: PrepareReview, course: Course, *, seed: int, capacity: int) -> Plan:
    """The plan that a host chose for a course list; `seed` is taken unless the host names one."""
    blueprint = None if message.blueprint is None else blueprint_of(message.blueprint)
    families = message.families if blueprint is None else [cell.family for cell in blueprint.cells]
    plan = _plan_of_both(
        message, course, seed=seed if message.seed is None else message.seed, capacity=capacity
    )
    return replace(
        plan,
        families=tuple(family for family in plan.families if family in families),
        rounds=message.rounds if blueprint is None else blueprint.rounds,
        certainty=message.certainty,
        holds_results=message.holds_results,
        players_take_time=message.players_take_time,
        blueprint=blueprint,
        rehearsal=message.rehearsal,
        roster=message.roster,
    )


def plan_of_group(message: OpenGroup, course: Course, *, seed: int, limits: GroupLimits) -> Plan:
    """The plan that a study group chose for a course list, within the server's limits."""
    plan = _plan_of_both(message, course, seed=seed, capacity=limits.size)
    return replace(plan, group=GroupRules(reading_s=message.reading_seconds, hours=limits.hours))


def blueprint_of(choice: BlueprintChoice) -> Blueprint:
    """The blueprint that a host filled in, weights turned into rounds, without its empty cells.

    Whether its regions and families are there is judged when it is dealt.
    """
    numbers = tuple(cell.rounds for cell in choice.cells)
    rounds = numbers if choice.share is None else whole_rounds(numbers, choice.share)
    cells = (
        Cell(region=cell.region, family=cast("Family", cell.family), rounds=given)
        for cell, given in zip(choice.cells, rounds, strict=True)
        if given
    )
    return Blueprint(cells=tuple(cells), interleave=choice.interleave, warm_up=choice.warm_up, aim=choice.aim)


def _plan_of_both(message: PrepareReview | OpenGroup, course: Course, *, seed: int, capacity: int) -> Plan:
    return Plan(
        title=" ".join(message.title.split()) or course.title,
        course=course.id,
        course_title=course.title,
        families=tuple(family for family in FAMILIES if family in course.families),
        rounds=message.rounds,
        seed=seed,
        timing=message.timing,
        seconds=message.seconds,
        typed=message.typed,
        standings=message.standings,
        capacity=capacity,
        benches=_bench_rules(message.benches),
    )


def _bench_rules(choice: BenchChoice | None) -> BenchRules | None:
    if choice is None:
        return None
    return BenchRules(how=choice.how, size=choice.size, answers=choice.answers, stations=choice.stations)
