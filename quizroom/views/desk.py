"""The host's private panel."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace
from datetime import datetime
from typing import Literal

from quizroom.analysis.certainty import sureness_of_room
from quizroom.marking import RoomMarks, RoundMarks
from quizroom.questions.difficulty import band_of
from quizroom.questions.model import Item
from quizroom.questions.rekeying import key_words
from quizroom.room.clock import limit_ms
from quizroom.room.own_time import can_keep_own_time, clock_of, keeps_own_clocks, takes_time
from quizroom.room.roster import roster_of
from quizroom.room.state import Answer, Room, Round
from quizroom.room.stations import answers_now
from quizroom.room.taking_time import may_take_time
from quizroom.views.benches import bench_warnings
from quizroom.views.changes import change_rows, flags_face
from quizroom.views.changes_model import FlagsFace
from quizroom.views.credit import credit_count
from quizroom.views.desk_actions import desk_actions
from quizroom.views.desk_model import DeskItem, DeskView, RosterRow
from quizroom.views.measured import measured
from quizroom.views.moment import milliseconds
from quizroom.views.own_time import clock_face
from quizroom.views.picture import picture_face
from quizroom.views.public import public_view
from quizroom.views.results import desk_options, desk_typed, key_text, mean_mark
from quizroom.views.rows import row_results
from quizroom.views.stations import to_show
from quizroom.views.talk import talk_panels


def desk_view(room: Room, marks: RoomMarks, now: datetime) -> DeskView:
    """Everything that the host needs for this round on one screen."""
    return with_roster(desk_without_roster(room, marks, now), roster_rows(room, marks))


def with_roster(view: DeskView, rows: Iterable[RosterRow]) -> DeskView:
    """The whole view: with the players that came later."""
    return replace(view, roster=tuple(rows), roster_later=False)


def desk_without_roster(room: Room, marks: RoomMarks, now: datetime) -> DeskView:
    """The view without the list of players, which follows: with thousands it is by far the largest part."""
    opened = [
        _opened_item(room, current, marked) for current, marked in zip(room.rounds, marks.rounds, strict=True)
    ]
    talks = talk_panels(room, marks)
    ahead = [_item_ahead(room, index, item) for index, item in enumerate(room.ahead)]
    return DeskView(
        version=room.version,
        now=milliseconds(now),
        room=room.id,
        public=public_view(room, marks, now),
        seed=room.plan.seed,
        families=room.plan.families,
        timing=room.plan.timing,
        fixed_seconds=room.plan.seconds,
        standings=room.standings,
        holds_results=room.holds_results,
        answered=_answered(room),
        can_keep_own_time=can_keep_own_time(room.plan),
        players_take_time=may_take_time(room.plan),
        items=(*opened, *_at_stations(room), *ahead),
        sureness=sureness_of_room(room, marks),
        roster=(),
        roster_later=True,
        talks=talks,
        actions=desk_actions(room, talks[-1].advice if talks else None),
        bench_warnings=bench_warnings(room),
        credit=credit_count(room),
        changes=change_rows(room),
    )


def _answered(room: Room) -> int:
    if not room.rounds:
        return 0
    current = room.rounds[-1]
    return len(current.answers if current.again_at is None else current.second_answers)


def _opened_item(room: Room, current: Round, marks: RoundMarks) -> DeskItem:
    state: Literal["open", "closed", "explained"] = "open"
    if current.explained_at is not None:
        state = "explained"
    elif current.closed_at is not None:
        state = "closed"
    face = _face(current.item, current, marks, seconds=_seconds_asked(current))
    return replace(
        face,
        round=current.number,
        state=state,
        struck=current.struck,
        twin_of=room.twins.get(current.item.id),
        typed=desk_typed(current, marks),
        mean_mark=mean_mark(marks) if current.closed_at is not None else None,
        dealt_key="" if current.dealt is None else key_words(current.dealt),
        flags=flags_face(current),
    )


def _at_stations(room: Room) -> Iterator[DeskItem]:
    """Items of stations that have not been shown; how they were answered is told when they are."""
    block = room.stations
    if block is not None:
        for index, item in list(enumerate(block.items))[block.shown :]:
            face = _face(item, None, None, seconds=_whole_seconds(block.limit_ms))
            yield replace(face, round=block.first + index, state="closed" if block.over else "open")


def _item_ahead(room: Room, index: int, item: Item) -> DeskItem:
    face = _face(item, None, None, seconds=_whole_seconds(limit_ms(room.plan, item)))
    return replace(
        face,
        round=len(room.rounds) + to_show(room) + index + 1,
        position=index,
        twin_of=room.twins.get(item.id),
    )


def _face(item: Item, current: Round | None, marks: RoundMarks | None, *, seconds: int | None) -> DeskItem:
    return DeskItem(
        id=item.id,
        round=0,
        position=None,
        state="ahead",
        struck=False,
        twin_of=None,
        family=item.family,
        format=item.format,
        stem=item.stem,
        options=desk_options(item, marks),
        rows=row_results(item, current, reasons=True),
        typed=(),
        key_text=key_text(item),
        why=item.why.text,
        pick=item.pick,
        seconds=seconds,
        muscles=tuple(record.name for record in item.records),
        region=item.records[0].region if item.records else "",
        predicted=None if item.difficulty is None else band_of(item.difficulty),
        observed=None if item.observed is None else measured(item.observed),
        warm_up=item.warm_up,
        mean_mark=None,
        picture=picture_face(item),
        by_host=item.by_host,
        key=item.key,
        dealt_key="",
        flags=FlagsFace(up=0, waiting=0, texts=()),
    )


def _seconds_asked(current: Round) -> int | None:
    """How long the first answering was."""
    return _whole_seconds(current.limit_ms if current.talked_at is None else current.first_limit_ms)


def _whole_seconds(ms: int | None) -> int | None:
    return None if ms is None else ms // 1000


def _answers_now(room: Room) -> Mapping[str, Answer]:
    """What is being answered: first answers, or second ones, or those at stations."""
    if room.phase == "stations":
        return answers_now(room)
    if not room.rounds:
        return {}
    return room.rounds[-1].second_answers if room.phase == "answering again" else room.rounds[-1].answers


def roster_rows(room: Room, marks: RoomMarks) -> Iterator[RosterRow]:
    """All players by handle, each with what the host alone may know."""
    # For thousands of players, again and again: what is the same for all is looked up once.
    answered, totals, benches = frozenset(_answers_now(room).keys()), marks.totals, room.benches
    keeps_clocks = keeps_own_clocks(room)
    for player in roster_of(room.players).by_handle():
        total, takes = totals[player.id], takes_time(room, player)
        has_more = keeps_clocks and (takes or player.factor_percent > 100)
        clock = clock_of(room, player) if has_more else None
        yield RosterRow(
            player=player.id,
            handle=player.handle,
            from_round=player.from_round,
            answered=player.id in answered,
            marks=total.marks,
            of=total.of,
            bench=benches.get(player.id, ""),
            factor_percent=player.factor_percent,
            takes_time=takes,
            clock=None if clock is None else clock_face(clock),
        )
