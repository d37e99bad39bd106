"""What may be told of the current round, while later ones are still to come."""

from dataclasses import replace

from quizroom.questions.waiting import told_before
from quizroom.room.state import Room, Round


def round_as_told(room: Room) -> Round | None:
    """The current round, without what holds the key of a round ahead; None before the first.

    Once a review has ended nothing waits any more.
    """
    current = room.rounds[-1] if room.rounds else None
    if current is None or current.explained_at is None or room.phase == "finished":
        return current
    item = told_before(current.item, room.ahead)
    return current if item is current.item else replace(current, item=item)


def records_waiting(room: Room, told: Round | None) -> tuple[str, ...]:
    """The muscles of the current round whose records are shown after a later one."""
    if told is None or told.explained_at is None:
        return ()
    shown = {record.muscle for record in told.item.records}
    return tuple(record.name for record in room.rounds[-1].item.records if record.muscle not in shown)
