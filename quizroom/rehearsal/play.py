"""The play itself: gathering, the rounds one after another, the end."""

from collections.abc import Callable
from dataclasses import dataclass

from quizroom.rehearsal.account import round_line
from quizroom.rehearsal.deeds import Deed, carry_out, deeds_of_round, wait
from quizroom.rehearsal.host import Host, Step
from quizroom.rehearsal.pace import Pace
from quizroom.rehearsal.people import Person
from quizroom.rehearsal.seat import SimulatedSeat
from quizroom.rehearsal.skill import task_of

ROUND_WITH_MORE_TIME = 2
ROUND_STRUCK = 3


@dataclass(frozen=True, slots=True, kw_only=True)
class Play:
    """A laid-out review and those who play it; `tell` gets lines for people."""

    address: str
    host: Host
    seats: tuple[SimulatedSeat, ...]
    pace: Pace
    seed: int
    tell: Callable[[str], None]


def seats_for(address: str, door_code: str, people: tuple[Person, ...]) -> tuple[SimulatedSeat, ...]:
    """A device for each person."""
    return tuple(SimulatedSeat(address, door_code, person) for person in people)


def play_review(play: Play) -> None:
    """Gather, play every round, end. Stops early if the review is ended at a real desk."""
    gather(play)
    while play.host.phase != "finished" and play.host.has_items_ahead:
        play_round(play, play.host.round + 1)
    play.host.step("end_review", number=play.host.round)


def gather(play: Play) -> None:
    """Players come in one after another."""
    early = [seat for seat in play.seats if seat.person.visit.joins_at == 0]
    step_s = play.pace.gathering_s / (len(early) + 1)
    arrivals = [Deed(step_s * (place + 1), _coming_in(play, seat)) for place, seat in enumerate(early)]
    carry_out(arrivals, until_s=play.pace.gathering_s, goes_on=lambda: play.host.phase == "gathering")
    play.host.look()
    play.tell(f"{play.host.desk['public']['players']} players are in")


def play_round(play: Play, number: int) -> None:
    """Open a round, let everybody answer, close it, show the record."""
    host = play.host
    if host.phase == "answering":
        number = host.round  # somebody at the real desk was faster
    host.step("open_round", number=number)
    if host.phase != "answering":
        return  # somebody at the real desk has closed it again
    task = task_of(host.desk, number)
    play.tell(f"Round {number} of {host.desk['public']['rounds']}: {task.stem}")
    deeds = deeds_of_round(task, play.seats, pace=play.pace, seed=play.seed)
    carry_out([*_deeds_of_host(play, number), *deeds], goes_on=lambda: _is_open(host, number))
    host.step("close_round", number=number)
    wait(play.pace.closed_s, goes_on=lambda: host.phase == "closed")
    host.step("show_record", number=number)
    _after_the_record(play, number)
    play.tell(f"  {round_line(host.desk, number)}")
    wait(play.pace.record_s, goes_on=lambda: host.phase == "explained")


def end_early(play: Play) -> None:
    """End a review that is not to be played on, so that its door does not stay open."""
    play.host.look()
    play.host.step("end_review", number=play.host.round)


def hang_up(play: Play) -> None:
    """Let everybody leave the line."""
    for seat in play.seats:
        seat.drop()
    play.host.close()


def _coming_in(play: Play, seat: SimulatedSeat) -> Callable[[], None]:
    def come_in() -> None:
        seat.enter()
        if seat.person.has_second_device:
            second = SimulatedSeat(play.address, play.host.door_code, seat.person)
            second.enter()
            second.drop()

    return come_in


def _deeds_of_host(play: Play, number: int) -> list[Deed]:
    """Once in a rehearsal the host pauses, and gives more time."""
    if number != ROUND_WITH_MORE_TIME:
        return []
    step_s = play.pace.thinking_s / 6
    return [
        Deed(step_s, lambda: _step(play.host, "pause_round", number)),
        Deed(2 * step_s, lambda: _step(play.host, "resume_round", number)),
        Deed(3 * step_s, lambda: play.host.add_time(15)),
    ]


def _step(host: Host, step: Step, number: int) -> None:
    host.step(step, number=number)


def _is_open(host: Host, number: int) -> bool:
    return host.phase == "answering" and host.round == number


def _after_the_record(play: Play, number: int) -> None:
    """Once an item is struck, and from the middle on there are standings."""
    if number == ROUND_STRUCK:
        play.host.strike(number)
    if 2 * number >= play.host.desk["public"]["rounds"] and play.host.desk["public"]["standings"] is None:
        play.host.show_standings()
    play.host.look()
