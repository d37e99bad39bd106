"""Random evenings of a study group: what players and lines may do, in any order, at any time."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta
from typing import NamedTuple

from hypothesis import strategies as st

from quizroom.room.bench_commands import AnswerForBench, TakeBench
from quizroom.room.bench_state import BenchRules
from quizroom.room.commands import Command, GiveBackTime, SubmitAnswer
from quizroom.room.group import due_step
from quizroom.room.group_commands import (
    AskPause,
    GoOn,
    LeaveSeat,
    MoveOn,
    RenameSelf,
    ReturnToSeat,
    SayReady,
    SendOut,
)
from quizroom.room.group_commands import Step as Due
from quizroom.room.group_state import GroupRules
from quizroom.room.state import Plan, Room
from tests.room.histories import Step, carried_out
from tests.room.sample_items import matching, one_best, pick_three
from tests.room.samples import NOON, gathered, plan, seat

GROUP = ("ada", "bo", "cem")
KINDS = (
    *["answer", "ready"] * 6,
    *["tick"] * 8,
    *["bench", "for_bench"] * 3,
    *["leave", "return", "pause", "go_on"] * 2,
    *["enter", "send_out", "rename", "give_back", "stale"],
)
SECONDS = (*[0.0, 0.1, 2.0] * 5, 20.0, 46.0, 61.0, 700.0)


class Move(NamedTuple):
    """One thing that happens: what, to whom, and how many seconds after the one before."""

    kind: str
    who: int
    what: int
    seconds: float


def group_plan(*, reading_s: int | None = 60, timing: str = "fixed", hours: int = 3) -> Plan:
    """The plan of a review without a host, 45 s a round."""
    return replace(plan(timing=timing), group=GroupRules(reading_s=reading_s, hours=hours), capacity=4)


def bench_group_plan() -> Plan:
    """The same at benches that hand in together."""
    return replace(group_plan(timing="untimed"), benches=BenchRules(how="choice"))


def gathered_group(by: Plan | None = None, players: tuple[str, ...] = GROUP) -> Room:
    """A group in its seats, with three items ahead."""
    return gathered(one_best(), matching(), pick_three(), by=by or group_plan(), players=players)


def evenings() -> st.SearchStrategy[list[Move]]:
    """Up to fifty things that happen."""
    moves = st.builds(
        Move, st.sampled_from(KINDS), st.integers(0, 3), st.integers(0, 7), st.sampled_from(SECONDS)
    )
    return st.lists(moves, max_size=50)


def lived(evening: list[Move], by: Plan | None = None) -> Iterator[Step]:
    """Carry an evening out; the watch looks after everything that happens, as it does ten times a second."""
    room, now = gathered_group(by), NOON
    for move in evening:
        now += timedelta(seconds=move.seconds)
        command = worded(room, move)
        for order in (command, moved_on(room, now) if move.kind == "tick" else None):
            if order is not None:
                step = carried_out(room, order, now)
                room = step.room
                yield step


def worded(room: Room, move: Move) -> Command | None:
    """The order of a move, given the room as it then is."""
    player = (*GROUP, "dele")[move.who]
    number = len(room.rounds)
    match move.kind:
        case "answer":
            return answer_of(room, player, move.what) if room.rounds else None
        case "ready":
            return SayReady(player=player, round=number, alone=move.what == 0)
        case "pause":
            return AskPause(player=player, round=number)
        case "go_on":
            return GoOn(player=player, round=number)
        case "bench":
            return TakeBench(player=player, bench=("", "Carpals", "Tarsals")[move.what % 3])
        case "for_bench":
            return together(room, player, move.what) if room.rounds else None
        case "leave":
            return LeaveSeat(player=player)
        case "return":
            return ReturnToSeat(player=player)
        case _:
            return _rarely(room, player, move)


def answer_of(room: Room, player: str, what: int = 0) -> SubmitAnswer:
    """An answer that fits the open item."""
    item = room.rounds[-1].item
    letters = [option.letter for option in item.options]
    first = what % len(letters)
    turned = [*letters[first:], *letters[:first]]
    return SubmitAnswer(player=player, round=len(room.rounds), choice=tuple(turned[: item.pick]))


def together(room: Room, player: str, what: int = 0) -> AnswerForBench:
    """The same for the player's bench."""
    alone = answer_of(room, player, what)
    return AnswerForBench(player=player, round=alone.round, choice=alone.choice)


def moved_on(room: Room, now: datetime) -> MoveOn | None:
    """What the watch orders now."""
    step = due_step(room, now)
    return None if step is None else MoveOn(step=step, round=len(room.rounds))


def _rarely(room: Room, player: str, move: Move) -> Command | None:
    match move.kind:
        case "enter":
            return seat(player)
        case "send_out":
            return SendOut(by=GROUP[move.what % 3], player=player) if move.what < 3 else None
        case "rename":
            return RenameSelf(player=player, handle=f"Teal Talus {move.what}")
        case "give_back":
            return GiveBackTime(ms=4000)
        case "stale":
            steps: tuple[Due, ...] = ("open_round", "close_round", "show_record", "end_review")
            return MoveOn(step=steps[move.what % 4], round=max(0, len(room.rounds) - move.what // 4))
        case _:
            return None
