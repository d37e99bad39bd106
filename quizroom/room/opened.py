"""Rounds as orders name them: by number, once they have been opened."""

from quizroom.room.refusals import Refused
from quizroom.room.state import Room, Round


def opened_round(room: Room, number: int) -> Round:
    """The round of this number.

    Raises:
        Refused: `no_such_round`, since it has not been opened.
    """
    if not 1 <= number <= len(room.rounds):
        raise Refused("no_such_round")
    return room.rounds[number - 1]
