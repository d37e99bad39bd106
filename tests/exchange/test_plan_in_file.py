"""A plan's fields: which a file carries, and that they come back."""

from dataclasses import fields, replace

from quizroom.exchange.review_file.model import PlanInFile
from quizroom.exchange.review_file.plan import plan_of
from quizroom.exchange.review_file.reading import read_review
from quizroom.exchange.review_file.writing import review_file
from quizroom.room.bench_state import BenchRules
from quizroom.room.state import Plan
from tests.exchange.review_samples import finished

HERE = {"rounds", "capacity", "group", "rehearsal", "imported", "roster"}
"""Fields that a file leaves out: they follow from its items, or are of this server and its players."""


def test_of_each_field_of_a_plan_it_is_decided_whether_a_file_carries_it() -> None:
    carried = {field.name for field in fields(PlanInFile)}
    assert carried.isdisjoint(HERE)
    assert carried | HERE == {field.name for field in fields(Plan)}


def test_what_is_carried_comes_back_whatever_was_chosen() -> None:
    room, log = finished([])
    chosen = replace(
        room.plan,
        timing="fixed",
        seconds=77,
        standings=True,
        certainty=True,
        holds_results=True,
        benches=BenchRules(how="drawn", size=3),
        roster="a1",
    )
    file = read_review(review_file(replace(room, plan=chosen), log, lambda _: None, happened=False)).file
    back = plan_of(file, capacity=chosen.capacity, imported=False)
    assert back == replace(chosen, roster="", rounds=len(file.items))
