"""What an event changes in one round."""

from collections.abc import Mapping
from dataclasses import replace

from quizroom.room import copying
from quizroom.room.clock import closing_of, later
from quizroom.room.events import (
    AnswerAccepted,
    ItemRestored,
    ItemStruck,
    RecordShown,
    RoundClosed,
    RoundPaused,
    RoundResumed,
    TimeAdded,
    WordsRuled,
)
from quizroom.room.former_words import known_words
from quizroom.room.growing import with_one
from quizroom.room.state import Answer, Room, Round

RoundEvent = (
    AnswerAccepted
    | ItemRestored
    | ItemStruck
    | RecordShown
    | RoundClosed
    | RoundPaused
    | RoundResumed
    | TimeAdded
    | WordsRuled
)


def in_room(room: Room, event: RoundEvent) -> Room:
    """Return the room with the round that `event` is about changed."""
    phase = "explained" if isinstance(event, RecordShown) else room.phase
    return replace(room, phase=phase, rounds=rounds_after(room, event))


def rounds_after(room: Room, event: RoundEvent) -> tuple[Round, ...]:
    """All rounds of the room, with the one that `event` is about changed."""
    number = _number_of(room, event)
    changed = apply(room.rounds[number - 1], event)
    return (*room.rounds[: number - 1], changed, *room.rounds[number:])


def apply(current: Round, event: RoundEvent) -> Round:
    """Return the round as it is after `event`."""
    match event:
        case AnswerAccepted():
            answer = Answer(choice=event.choice, typed=event.typed, at=event.at, certainty=event.certainty)
            if event.again:
                again = with_one(current.second_answers, event.player, answer)
                return copying.changed(current, second_answers=again)
            return copying.changed(current, answers=with_one(current.answers, event.player, answer))
        case RoundPaused():
            return replace(current, paused=True, left_ms=event.left_ms, closes_at=None)
        case RoundResumed():
            return replace(current, paused=False, left_ms=None, closes_at=event.closes_at)
        case TimeAdded():
            return _longer(current, event)
        case RoundClosed():
            return replace(
                current,
                paused=False,
                left_ms=None,
                closes_at=closing_of(current, event.at),
                closed_at=event.at,
                answered_at_closing=len(current.answers),
            )
        case RecordShown():
            return replace(current, explained_at=event.at)
        case ItemStruck():
            return replace(current, struck=True)
        case ItemRestored():
            return replace(current, struck=False)
        case WordsRuled():
            return replace(current, rulings={**current.rulings, event.words: event.accept})


def without_answer(current: Round, player: str) -> Round:
    """Return the round without this player's answers; one that holds none stays the same."""
    if player not in current.answers and player not in current.second_answers:
        return current
    return replace(
        current,
        answers=_without(current.answers, player),
        second_answers=_without(current.second_answers, player),
    )


def with_known_words(current: Round, player: str, bench: str) -> Round:
    """Return the round with nothing in the answers of this player and bench that only they could think of.

    What the player handed in for a bench where they sit no more is theirs too.
    """
    theirs = {one for one, answer in current.bench_answers.items() if player == answer.by}
    of_benches = current.bench_answers
    for one in theirs | {bench}:
        of_benches = _with_known_words(current, of_benches, one)
    return replace(
        current,
        answers=_with_known_words(current, current.answers, player),
        second_answers=_with_known_words(current, current.second_answers, player),
        bench_answers=of_benches,
    )


def _without(answers: Mapping[str, Answer], player: str) -> Mapping[str, Answer]:
    return {key: value for key, value in answers.items() if key != player} if player in answers else answers


def _with_known_words(current: Round, answers: Mapping[str, Answer], whose: str) -> Mapping[str, Answer]:
    answer = answers.get(whose)
    if answer is None or not answer.typed:
        return answers
    return {**answers, whose: replace(answer, typed=known_words(answer.typed, current))}


def _longer(current: Round, event: TimeAdded) -> Round:
    # Time given back after an outage was never part of the round's length: the rule shows what players had.
    limit = (
        current.limit_ms
        if event.cause == "outage" or current.limit_ms is None
        else current.limit_ms + event.ms
    )
    orders = (*current.orders, event.order) if event.order else current.orders
    left = None if current.left_ms is None else current.left_ms + event.ms
    return replace(
        current, closes_at=later(current.closes_at, event.ms), left_ms=left, limit_ms=limit, orders=orders
    )


def _number_of(room: Room, event: RoundEvent) -> int:
    match event:
        case RoundPaused() | RoundResumed() | TimeAdded():
            return len(room.rounds)
        case _:
            return event.round
