"""What happened, for the operator's log: steps of reviews by their ids. Never who, what, or from where."""

import logging

from quizroom.room.bench_events import BenchAnswered, BenchTaken
from quizroom.room.change_events import FlagTakenBack, ItemFlagged
from quizroom.room.events import (
    AnswerAccepted,
    PlayerRemoved,
    PlayerRenamed,
    SeatEntered,
    WordsRuled,
)
from quizroom.room.group_events import PauseAsked, PauseEnded, PlayerLeft, PlayerReady, PlayerReturned
from quizroom.room.owner_events import PlayerForgotten, SeatLinked
from quizroom.room.station_events import StationAnswered
from quizroom.room.time_events import AlwaysTimeSet, OwnTimeReturned, TimeFactorSet, TimeLinkMade, TimeTaken
from quizroom.service.rooms import Change

NOT_TOLD = (
    AnswerAccepted,
    BenchAnswered,
    BenchTaken,
    OwnTimeReturned,
    FlagTakenBack,
    ItemFlagged,
    PauseAsked,
    PauseEnded,
    PlayerForgotten,
    PlayerLeft,
    PlayerReady,
    PlayerRemoved,
    PlayerRenamed,
    PlayerReturned,
    SeatEntered,
    SeatLinked,
    TimeFactorSet,
    TimeLinkMade,
    TimeTaken,
    AlwaysTimeSet,
    StationAnswered,
    WordsRuled,
)
"""What single people did stays out of the log altogether; metrics count it."""

logger = logging.getLogger(__name__)


def note_steps(change: Change) -> None:
    """Log the steps of a review that a commit of this process held."""
    if not change.ours:
        return
    for event in change.events:
        if not isinstance(event, NOT_TOLD):
            logger.info(
                "review step",
                extra={
                    "step": type(event).__name__,
                    "room": change.room.id,
                    "round": len(change.room.rounds),
                    "players": len(change.room.players),
                },
            )
