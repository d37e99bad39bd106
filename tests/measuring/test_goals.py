"""Goals of issue 6: which ratio is missed, and that the report says so."""

import pytest

from quizroom.measuring.goals import Figure, deflate_figure, figures, percentile
from quizroom.measuring.session import Session


def session(size: int, *, times: float = 1.0) -> Session:
    """A session in which everything takes so many times as long as usual."""
    steps = {"opening": [0.02 * times], "closing": [0.02 * times], "record": [0.03 * times]}
    return Session(
        size=size,
        join_s=times,
        join_cpu_s=times,
        kib=50 * times,
        last_s=dict(steps),  # type: ignore[arg-type] # the names are steps
        own_s=dict(steps),  # type: ignore[arg-type] # likewise
        step_cpu_s=dict(steps),  # type: ignore[arg-type] # likewise
        answers_a_second=[10_000 / times],
        acks_s=[[0.001 * times] * 100],
        round_cpu_s=[0.4 * times],
    )


@pytest.mark.parametrize(
    "limits,value,verdict",
    [
        ({"most": 1.15}, 114.0, "reached"),
        ({"most": 1.15}, 116.0, "MISSED"),
        ({"least": 0.55}, 56.0, "reached"),
        ({"least": 0.55}, 54.0, "MISSED"),
        ({"most_itself": 70.0}, 70.0, "reached"),
        ({"most_itself": 70.0}, 71.0, "MISSED"),
        ({"most": 1.15, "most_itself": 6.0}, 7.0, "MISSED"),
        ({}, 1000.0, "no goal"),
    ],
)
def test_a_goal_is_missed_beyond_its_limit(limits: dict[str, float], value: float, verdict: str) -> None:
    figure = Figure(name="anything", unit="ms", value=value, floor=100.0, **limits)
    assert figure.is_missed == (verdict == "MISSED")
    assert ("MISSED" in figure.line()) == (verdict == "MISSED")


def test_at_the_floor_every_goal_is_reached() -> None:
    assert [each.name for each in figures([session(2000)], [session(2000)]) if each.is_missed] == []


def test_far_above_the_floor_every_goal_is_missed() -> None:
    missed = {each.name for each in figures([session(2000, times=4)], [session(2000)]) if each.is_missed}
    assert missed == {
        "opening to the last player",
        "record to the last player",
        "opening, CPU",
        "durable answers, all at once",
        "spread answers, 99 % acknowledged within",
        "join storm, CPU for each player",
        "memory of a connection",
    }


def test_goals_hold_at_two_thousand_players_only() -> None:
    assert not any(each.is_missed for each in figures([session(200, times=9)], [session(200)]))


def test_what_an_offer_of_compression_costs_is_the_ratio_of_both_ways() -> None:
    floors = [session(2000), session(2000, times=1.5)]  # the machine has become slower meanwhile
    assert not deflate_figure([session(2000), session(2000, times=1.6)], floors).is_missed
    assert deflate_figure([session(2000), session(2000, times=2.6)], floors).is_missed


def test_the_percentile_is_a_value_that_was_measured() -> None:
    assert percentile([3.0, 1.0, 2.0, 4.0], 0.5) == 3.0
    assert percentile([1.0], 0.99) == 1.0
    assert percentile([], 0.99) == 0.0
