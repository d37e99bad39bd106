"""What an event changes where a class talks and answers again."""

from dataclasses import replace

from quizroom.room.clock import closing_of, limit_ms, milliseconds_between
from quizroom.room.state import Phase, Room, Round
from quizroom.room.talk_events import AgainClosed, AgainOpened, TalkEvent, TalkOpened, TwinAdded


def after(room: Room, event: TalkEvent) -> Room:
    """The room after `event`. The round's clock is that of what is done now; its first length is kept."""
    match event:
        case TalkOpened():
            return _talking(room, event)
        case AgainOpened():
            return _answering_again(room, event)
        case AgainClosed():
            return _closed_again(room, event)
        case TwinAdded():
            twins = {**room.twins, event.item.id: event.round}
            before, behind = room.ahead[: event.position], room.ahead[event.position :]
            return replace(room, ahead=(*before, event.item, *behind), twins=twins)


def _talking(room: Room, event: TalkOpened) -> Room:
    current = room.rounds[event.round - 1]
    talking = replace(
        current,
        talked_at=event.at,
        first_limit_ms=current.limit_ms,
        closes_at=event.closes_at,
        limit_ms=milliseconds_between(event.at, event.closes_at),
    )
    return _with_last(room, talking, "talking")


def _answering_again(room: Room, event: AgainOpened) -> Room:
    current = room.rounds[event.round - 1]
    again = replace(
        current,
        again_at=event.at,
        paused=False,
        left_ms=None,
        closes_at=event.closes_at,
        limit_ms=limit_ms(room.plan, current.item),
    )
    return _with_last(room, again, "answering again")


def _closed_again(room: Room, event: AgainClosed) -> Room:
    current = room.rounds[event.round - 1]
    closed = replace(
        current,
        again_closed_at=event.at,
        closes_at=closing_of(current, event.at),
        paused=False,
        left_ms=None,
        answered_at_closing=len(current.second_answers),
    )
    return _with_last(room, closed, "closed")


def _with_last(room: Room, current: Round, phase: Phase) -> Room:
    return replace(room, phase=phase, rounds=(*room.rounds[:-1], current))
