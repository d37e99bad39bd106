"""The plan of a review, into a file and out of it: what it carries is listed in `PlanInFile` alone."""

from dataclasses import fields
from typing import Any

from quizroom.exchange.review_file.model import PlanInFile, ReviewFile
from quizroom.room.state import Plan


def plan_in_file(plan: Plan) -> PlanInFile:
    """The part of a plan that is not about who plays."""
    return PlanInFile(**_carried(plan))


def plan_of(file: ReviewFile, *, capacity: int, imported: bool) -> Plan:
    """The plan of the review on this server."""
    return Plan(**_carried(file.plan), rounds=len(file.items), capacity=capacity, imported=imported)


def _carried(plan: Plan | PlanInFile) -> dict[str, Any]:
    return {field.name: getattr(plan, field.name) for field in fields(PlanInFile)}
