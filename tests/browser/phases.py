"""One round from the open door to the end, stopping wherever a page has something new to show."""

from collections.abc import Iterator

from quizroom.rehearsal.host import Host
from tests.browser.screen import Screen
from tests.browser.seat_screen import SeatScreen


def phases_of_one_round(room: Host, seat: SeatScreen, wall: Screen) -> Iterator[str]:
    """Play a review of one round, wrongly answered; yields once seat and wall show the phase."""
    item = room.desk["items"][0]
    seat.is_in()
    wall.shows("1 player here")
    yield "gathering"
    room.step("open_round", number=1)
    seat.sees_round(1, 1)
    wall.shows(item["stem"])
    yield "answering"
    seat.answer(item, right=False)
    wall.shows("1 of 1 answered")
    yield "answered"
    room.step("close_round", number=1)
    seat.shows("0 marks")
    wall.shows(item["key_text"][0])
    yield "closed"
    room.step("show_record", number=1)
    seat.shows(item["rows"][0]["reason"] if item["rows"] else "Why:")
    wall.shows(item["key_text"][-1] if item["rows"] else item["why"])
    yield "explained"
    room.show_standings()
    room.step("end_review", number=1)
    seat.shows("The review is finished")
    wall.shows("The review is finished")
    yield "finished"
