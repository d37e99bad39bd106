"""The view that one seat gets beside the public one."""

from collections.abc import Iterator, Mapping
from datetime import datetime

from quizroom.analysis.certainty import certainty_mark, is_right, sureness_of_player
from quizroom.marking import RoomMarks, judge, place_of
from quizroom.questions import typed
from quizroom.questions.model import Item
from quizroom.room.answers import IN_PLACES
from quizroom.room.own_time import can_keep_own_time, told_version
from quizroom.room.state import Answer, Player, Room, Round
from quizroom.views.benches import bench_place, own_bench
from quizroom.views.changes import own_flag, own_flags
from quizroom.views.credit import own_claim
from quizroom.views.group import own_group
from quizroom.views.moment import milliseconds
from quizroom.views.own_model import AnswerFace, ChosenReason, OwnResult, OwnRound, OwnView, Verdict
from quizroom.views.own_time import own_clock_face, time_to_take
from quizroom.views.public import standings_are_out
from quizroom.views.rows import row_reasons
from quizroom.views.stations import own_at_station
from quizroom.views.telling import round_as_told


def own_view(
    room: Room, player: str, marks: RoomMarks, now: datetime, *, told: Round | None = None
) -> OwnView:
    """What only this player may see. One who was sent out sees that and nothing else.

    `told` is `round_as_told(room)`: whoever makes the views of a whole class works it out once for all.
    """
    seated = room.players.get(player)
    if seated is None:
        return _removed_view(room, player, now)
    current = told or round_as_told(room)
    answer = current.answers.get(player) if current else None
    total = marks.totals[player]
    view = OwnView(
        version=told_version(room),
        now=milliseconds(now),
        player=player,
        handle=seated.handle,
        removed=False,
        from_round=seated.from_round,
        round=len(room.rounds),
        answer=_answer_face(len(room.rounds), answer),
        second=_answer_face(len(room.rounds), current.second_answers.get(player) if current else None),
        result=_own_result(seated, current, marks),
        marks=total.marks,
        of=total.of,
        rounds=tuple(_own_rounds(room, seated, marks)),
        place=_place(room, player, marks),
        sureness=sureness_of_player(room, marks, player),
        group=own_group(room, player),
        bench=own_bench(room, player, marks),
        flag=own_flag(seated, current),
        flags=tuple(own_flags(room, seated)),
        factor_percent=seated.factor_percent,
        factor_counts=can_keep_own_time(room.plan) and room.holds_results,
        time_to_take=time_to_take(room, seated),
        clock=own_clock_face(room, player),
        clock_again=bool(current and current.again_at),
        kept=bool(seated.owner),
        claim=own_claim(room, player),
    )
    return own_at_station(room, player, view)


def _removed_view(room: Room, player: str, now: datetime) -> OwnView:
    return OwnView(
        version=told_version(room),
        now=milliseconds(now),
        player=player,
        handle="",
        removed=True,
        from_round=0,
        round=len(room.rounds),
        answer=None,
        result=None,
        marks=0.0,
        of=0,
        rounds=(),
        place=None,
        group=own_group(room, player),
        bench=None,
        flag=None,
        flags=(),
        factor_percent=100,
        factor_counts=False,
        clock=None,
        clock_again=False,
        kept=False,
    )


def _answer_face(number: int, answer: Answer | None) -> AnswerFace | None:
    return (
        None
        if answer is None
        else AnswerFace(round=number, choice=answer.choice, typed=answer.typed, certainty=answer.certainty)
    )


def _own_result(player: Player, current: Round | None, marks: RoomMarks) -> OwnResult | None:
    if current is None or current.shown_at is None:
        return None
    mark = marks.rounds[-1].marks.get(player.id)
    answer = current.answers.get(player.id)
    explained = current.explained_at is not None and answer is not None
    return OwnResult(
        round=current.number,
        verdict=verdict_of(player, current, mark),
        mark=mark or 0.0,
        reasons=chosen_reasons(current.item, answer, _verdicts(current, answer))
        if explained and answer
        else (),
        certainty_mark=_certainty_mark(current, answer, mark),
        second=_second_verdict(player, current, marks),
    )


def _verdicts(current: Round, answer: Answer) -> Mapping[str, typed.Verdict]:
    """By the round as it may be told: those that its marks rest on may tell the key of a later round."""
    return {text: judge(current.item, text, current.rulings) for text in answer.typed}


def _second_verdict(player: Player, current: Round, marks: RoomMarks) -> Verdict | None:
    marked = marks.seconds[-1]
    if marked is None or player.id not in current.second_answers:
        return None
    return verdict_of(player, current, marked.marks.get(player.id))


def _certainty_mark(current: Round, answer: Answer | None, mark: float | None) -> int | None:
    if answer is None or answer.certainty is None or mark is None or current.struck:
        return None
    return certainty_mark(answer.certainty, right=is_right(mark))


def _own_rounds(room: Room, player: Player, marks: RoomMarks) -> Iterator[OwnRound]:
    for current, marked in zip(room.rounds, marks.rounds, strict=True):
        if current.shown_at is not None:
            mark = marked.marks.get(player.id)
            verdict = verdict_of(player, current, mark)
            yield OwnRound(round=current.number, verdict=verdict, mark=mark or 0.0)


def verdict_of(player: Player, current: Round, mark: float | None) -> Verdict:
    """How a round stands for a player, given the mark of their answer, None for none."""
    if current.struck:
        return "struck"
    if current.number < player.from_round:
        return "not counted"
    if mark is None:
        return "none"
    if mark == 1:
        return "right"
    return "part" if mark > 0 else "wrong"


def chosen_reasons(
    item: Item, answer: Answer, verdicts: Mapping[str, typed.Verdict]
) -> tuple[ChosenReason, ...]:
    """For each thing that was chosen or typed whether it was right, and why."""
    if item.format in IN_PLACES:
        return row_reasons(item, answer)
    lettered = tuple(
        ChosenReason(
            text=f"{option.letter}: {option.text}",
            right=option.letter in item.key,
            reason=option.reason.text,
        )
        for option in item.options
        if option.letter in answer.choice
    )
    return lettered + tuple(_typed_reason(text, verdicts[text]) for text in answer.typed)


def _typed_reason(text: str, found: typed.Verdict) -> ChosenReason:
    return ChosenReason(text=text, right=found.kind in ("right", "half"), reason=found.because)


def _place(room: Room, player: str, marks: RoomMarks) -> int | None:
    if not standings_are_out(room):
        return None
    return place_of(player, marks) if room.plan.benches is None else bench_place(room, player, marks)
