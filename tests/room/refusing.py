"""Asking a room whether it would refuse."""

from datetime import datetime

from quizroom.room.commands import Command
from quizroom.room.refusals import RefusalCode, Refused
from quizroom.room.rules import decide
from quizroom.room.state import Room
from tests.room.samples import NOON


def code_of(room: Room, command: Command, at: datetime = NOON) -> RefusalCode | None:
    """The code with which the order is refused, or None if it is carried out."""
    try:
        decide(room, command, at)
    except Refused as refused:
        return refused.code
    return None
