"""Twins in a file: each comes in right before its round opens, whatever the host put before it."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from quizroom.room.events import Event, ReviewEnded, RoundOpened
from quizroom.room.talk_events import TwinAdded


def with_twins_in_place(log: Sequence[Event], asked: Sequence[str], ahead: Sequence[str]) -> Iterator[Event]:
    """The log, in which twins come in where they end up, since a file tells no moves of items.

    A twin that was dropped or swapped does not come in at all.

    Args:
        log: of a finished review.
        asked: the ids of the items of all rounds, in order.
        ahead: the ids of the items that were never asked, in order; twins among them come in at the end.
    """
    added = {event.item.id: event for event in log if isinstance(event, TwinAdded)}
    for event in log:
        match event:
            case TwinAdded():
                continue
            case RoundOpened() if asked[event.round - 1] in added:
                yield added[asked[event.round - 1]]
            case ReviewEnded():
                for position, item in enumerate(ahead):
                    if item in added:
                        yield replace(added[item], position=position)
        yield event
