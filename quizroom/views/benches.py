"""What is told of benches: names and numbers, never who sits where, but for the host."""

from quizroom.marking import RoomMarks, bench_standings
from quizroom.room.bench_state import LEAST_AT_A_BENCH, MOST_AT_A_BENCH
from quizroom.room.benches import members, names
from quizroom.room.own_time import hides_counts
from quizroom.room.state import Room
from quizroom.views.own_model import AnswerFace, OwnBench
from quizroom.views.public_model import BenchesFace, BenchRow, StandingRow


def benches_face(room: Room) -> BenchesFace | None:
    """The part of the public view; None where everybody plays alone."""
    rules = room.plan.benches
    if rules is None:
        return None
    return BenchesFace(
        how=rules.how,
        answers=rules.answers,
        rows=tuple(BenchRow(bench=bench, players=len(members(room, bench))) for bench in names(room)),
        answered=_handed_in(room),
    )


def _handed_in(room: Room) -> int:
    """How many benches have handed in for what they are at now."""
    block = room.stations
    if block is not None and room.phase == "stations":
        return sum(bench in block.bench_answers[block.place_of(bench)] for bench in block.benches)
    return len(room.rounds[-1].bench_answers) if room.rounds else 0


def own_bench(room: Room, player: str, marks: RoomMarks) -> OwnBench | None:
    """A player's own part; None where everybody plays alone."""
    if room.plan.benches is None:
        return None
    bench = room.benches.get(player, "")
    current = room.rounds[-1] if room.rounds else None
    answer = current.bench_answers.get(bench) if current else None
    mine = members(room, bench) if bench else ()
    total = marks.benches.get(bench)
    shown = current is not None and current.shown_at is not None
    return OwnBench(
        bench=bench,
        members=len(mine),
        answered_alone=_answered_alone(room, mine),
        answer=AnswerFace(round=len(room.rounds), choice=answer.choice, typed=answer.typed)
        if answer
        else None,
        mark=marks.rounds[-1].bench_marks.get(bench) if shown else None,
        marks=total.marks if total else 0.0,
        of=total.of if total else 0,
    )


def _answered_alone(room: Room, members: tuple[str, ...]) -> int | None:
    if hides_counts(room):
        return None
    return sum(one in room.rounds[-1].answers for one in members) if room.rounds else 0


def bench_rows(marks: RoomMarks) -> tuple[StandingRow, ...]:
    """The standings by bench."""
    return tuple(
        StandingRow(place=row.place, handle=row.bench, marks=row.marks, of=row.of)
        for row in bench_standings(marks)
    )


def bench_place(room: Room, player: str, marks: RoomMarks) -> int | None:
    """The place of a player's bench; None for one who sits at none."""
    bench = room.benches.get(player)
    return next((row.place for row in bench_standings(marks) if row.bench == bench), None)


def bench_warnings(room: Room) -> tuple[str, ...]:
    """What a host should know before the first round."""
    if room.plan.benches is None:
        return ()
    sizes = {bench: len(members(room, bench)) for bench in names(room)}
    odd = [
        f"{bench} has {size} {'player' if size == 1 else 'players'}; three to six talk best."
        for bench, size in sizes.items()
        if not LEAST_AT_A_BENCH <= size <= MOST_AT_A_BENCH
    ]
    without = len(room.players) - sum(sizes.values())
    alone = [f"{without} {'player sits' if without == 1 else 'players sit'} at no bench."] if without else []
    return (*odd, *alone)
