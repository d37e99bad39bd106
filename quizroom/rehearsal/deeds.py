"""What happens within a round, and when: a list of deeds in order of time."""

import time
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from random import Random

from quizroom.rehearsal.pace import Pace
from quizroom.rehearsal.seat import SimulatedSeat
from quizroom.rehearsal.skill import Choice, Task, choice_of, thinking_s

CHANGES_MIND = 0.12
SLEEPS_THROUGH = 0.03
LOOK_EVERY_S = 0.1


@dataclass(frozen=True, slots=True)
class Deed:
    """Something that somebody does so many seconds into the round."""

    at_s: float
    do: Callable[[], None]


def deeds_of_round(task: Task, seats: Iterable[SimulatedSeat], *, pace: Pace, seed: int) -> list[Deed]:
    """Everything that the players will do in this round."""
    dice = Random(f"round {seed} {task.round}")  # noqa: S311 - a simulation, no secret
    return [deed for seat in seats for deed in _deeds_of_seat(task, seat, pace=pace, seed=seed, dice=dice)]


def carry_out(deeds: Iterable[Deed], *, goes_on: Callable[[], bool], until_s: float = 0.0) -> None:
    """Do each deed in its time, as long as it `goes_on`; then wait until `until_s`."""
    began = time.monotonic()
    for deed in sorted(deeds, key=lambda deed: deed.at_s):
        wait(began + deed.at_s - time.monotonic(), goes_on=goes_on)
        if not goes_on():
            return
        deed.do()
    wait(began + until_s - time.monotonic(), goes_on=goes_on)


def wait(seconds: float, *, goes_on: Callable[[], bool]) -> None:
    """Sleep so long, but not once it is over."""
    until = time.monotonic() + seconds
    while goes_on() and (left := until - time.monotonic()) > 0:
        time.sleep(min(left, LOOK_EVERY_S))


def _deeds_of_seat(task: Task, seat: SimulatedSeat, *, pace: Pace, seed: int, dice: Random) -> list[Deed]:
    person, visit = seat.person, seat.person.visit
    thought = thinking_s(task, pace=person.pace, typical_s=pace.thinking_s, dice=dice)
    choice = choice_of(task, ability=person.ability, seed=seed, dice=dice)
    changes, sleeps = dice.random() < CHANGES_MIND, dice.random() < SLEEPS_THROUGH
    coming = _arrival(task.round, seat, at_s=0.2 * thought)
    if visit.drops_at == task.round:
        return [*coming, Deed(0.4 * thought, seat.drop)]
    if sleeps or not visit.is_in(task.round):
        return coming
    first = choice_of(task, ability=person.ability - 1, seed=seed, dice=dice)
    hesitant = [_handing_in(0.6 * thought, seat, task, first)] if changes else []
    return [*coming, *hesitant, _handing_in(thought, seat, task, choice)]


def _arrival(number: int, seat: SimulatedSeat, *, at_s: float) -> list[Deed]:
    if seat.person.visit.joins_at == number:
        return [Deed(at_s, seat.enter)]
    if seat.person.visit.returns_at == number:
        return [Deed(at_s, seat.come_back)]
    return []


def _handing_in(at_s: float, seat: SimulatedSeat, task: Task, choice: Choice) -> Deed:
    return Deed(at_s, lambda: seat.answer(task.round, choice) if seat.is_seated else None)
