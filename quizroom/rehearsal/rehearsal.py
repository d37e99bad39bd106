"""A whole rehearsal, from finding the server to the summary."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from quizroom.rehearsal.account import summary
from quizroom.rehearsal.entry import CannotRehearse, desk_cookie, desk_settings, find_server
from quizroom.rehearsal.host import Host
from quizroom.rehearsal.pace import Pace
from quizroom.rehearsal.people import REVIEW_TITLE, people
from quizroom.rehearsal.play import Play, end_early, hang_up, play_review, seats_for


@dataclass(frozen=True, slots=True, kw_only=True)
class Rehearsal:
    """What to play; `course` "" takes the course list with most families."""

    players: int
    rounds: int
    pace: Pace
    seed: int
    course: str = ""


def rehearse(
    rehearsal: Rehearsal, *, address: str, new_desk_key: Callable[[], str], tell: Callable[[str], None]
) -> None:
    """Play a demo review against the running server; `tell` gets lines for people.

    Raises:
        CannotRehearse: with why and what to do.
    """
    find_server(address)
    cookie = desk_cookie(address, new_desk_key())
    play = _laid_out(rehearsal, address, cookie, tell)
    _invite(play, new_desk_key())
    try:
        play_review(play)
        tell(summary(play.host.desk, play.seats))
        tell(f"Its report, in the host's browser: {address}/desk/report/{play.host.desk['room']}")
    except KeyboardInterrupt:
        end_early(play)
        tell("The rehearsal is stopped and its review is ended.")
    finally:
        hang_up(play)


def _laid_out(rehearsal: Rehearsal, address: str, cookie: str, tell: Callable[[str], None]) -> Play:
    course = _course(desk_settings(address, cookie)["courses"], rehearsal.course)
    host = Host(address, cookie)
    host.lay_out(title=REVIEW_TITLE, course=course, rounds=rehearsal.rounds, seed=rehearsal.seed)
    return Play(
        address=address,
        host=host,
        seats=seats_for(address, host.door_code, people(rehearsal.players, rehearsal.seed)),
        pace=rehearsal.pace,
        seed=rehearsal.seed,
        tell=tell,
    )


def _course(courses: list[dict[str, Any]], chosen: str) -> dict[str, Any]:
    found = [course for course in courses if chosen in ("", course["id"])]
    if not found:
        names = ", ".join(course["id"] for course in courses)
        raise CannotRehearse(f"There is no course list {chosen} on this server. It has: {names}")
    return max(found, key=lambda course: len(course["families"]))


def _invite(play: Play, key: str) -> None:
    public = play.host.desk["public"]
    play.tell(f"A demo review of {public['rounds']} rounds is open: {public['title']}, {public['course']}")
    play.tell(f"  Wall, for the projector   {play.address}/wall/{public['door_code']}")
    play.tell(f"  Desk, for the host alone  {play.address}/desk/enter/{key}#{play.host.desk['room']}")
    play.tell(f"  A seat of your own        {play.address}/seat/{public['door_code']}")
    play.tell(f"The first round opens in {play.pace.gathering_s:.0f} s. Ctrl-C ends the rehearsal.")
