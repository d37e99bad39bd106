"""What an event changes at the benches."""

from dataclasses import replace

from quizroom.room.bench_events import BenchAnswered, BenchesDrawn, BenchEvent, BenchRenamed, BenchTaken
from quizroom.room.bench_renaming import renamed
from quizroom.room.state import Answer, Room


def after(room: Room, event: BenchEvent) -> Room:
    """The room with its benches changed."""
    match event:
        case BenchesDrawn():
            ordered = sorted(event.seats, key=lambda seat: (len(seat.bench), seat.bench))
            return replace(room, benches={seat.player: seat.bench for seat in ordered})
        case BenchTaken():
            others = {player: bench for player, bench in room.benches.items() if player != event.player}
            return replace(room, benches=others | ({event.player: event.bench} if event.bench else {}))
        case BenchRenamed():
            return renamed(room, event)
        case BenchAnswered():
            answer = Answer(choice=event.choice, typed=event.typed, at=event.at, by=event.player)
            current = room.rounds[event.round - 1]
            changed = replace(current, bench_answers={**current.bench_answers, event.bench: answer})
            rounds = (*room.rounds[: event.round - 1], changed, *room.rounds[event.round :])
            return replace(room, rounds=rounds)
