"""`apply`: a room after an event. Total and pure: events are facts and cannot be refused."""

from collections.abc import Iterable
from dataclasses import replace
from functools import reduce

from quizroom.questions.model import Item
from quizroom.room import (
    bench_folding,
    change_folding,
    copying,
    credit,
    host_folding,
    round_folding,
    station_folding,
    talk_folding,
    time_folding,
)
from quizroom.room.adding import ItemAdded, with_added
from quizroom.room.bench_events import BenchAnswered, BenchesDrawn, BenchEvent, BenchRenamed, BenchTaken
from quizroom.room.change_events import (
    ChangeEvent,
    FlagsSettled,
    FlagTakenBack,
    ItemFlagged,
    ItemRekeyed,
    KeyRestored,
)
from quizroom.room.change_noting import change_of
from quizroom.room.clock import limit_ms
from quizroom.room.credit_events import ClaimMissed, CreditEvent, EntryAssigned, EntryClaimed, RosterSet
from quizroom.room.events import (
    AnswerAccepted,
    DoorOpened,
    Event,
    HoldingSet,
    ItemDropped,
    ItemSwapped,
    PlayerRemoved,
    PlayerRenamed,
    RecordShown,
    ResultShown,
    ReviewEnded,
    ReviewPrepared,
    RoundClosed,
    RoundOpened,
    SeatEntered,
    StandingsSet,
)
from quizroom.room.group_events import PauseAsked, PauseEnded, PlayerLeft, PlayerReady, PlayerReturned
from quizroom.room.group_folding import run_after
from quizroom.room.group_state import GroupRun
from quizroom.room.holding import shown_up_to
from quizroom.room.host_events import HostEvent, ItemMoved, ReviewChanged, ReviewHandedOver, ReviewRenamed
from quizroom.room.own_time import is_untold
from quizroom.room.owner_events import PlayerForgotten, SeatLinked
from quizroom.room.roster import roster_of
from quizroom.room.state import Player, Room, Round
from quizroom.room.station_events import (
    BellRung,
    StationAnswered,
    StationEvent,
    StationShown,
    StationsOpened,
    StationTimeAdded,
)
from quizroom.room.talk_events import AgainClosed, AgainOpened, TalkEvent, TalkOpened, TwinAdded
from quizroom.room.time_events import TimeEvent


def apply(room: Room, event: Event) -> Room:
    """Return the room as it is after `event`, one version further."""
    if isinstance(event, AnswerAccepted):
        return _answered(room, event)
    changed = _changed(room, event)
    run = None if room.run is None else run_after(changed, room.run, event)
    noted = change_of(changed, event)
    changes = room.changes if noted is None else (*room.changes, noted)
    untold = room.untold + is_untold(room, event)
    return copying.changed(changed, run=run, changes=changes, version=room.version + 1, untold=untold)


def _answered(room: Room, event: AnswerAccepted) -> Room:
    # A class answers within seconds: this copies the room once, and asks for nothing an answer cannot change.
    rounds = round_folding.rounds_after(room, event)
    untold = room.untold + is_untold(room, event)
    return copying.changed(room, rounds=rounds, version=room.version + 1, untold=untold)


def begin(event: ReviewPrepared) -> Room:
    """Return the room that the first event of a log makes."""
    return Room(
        id=event.room,
        host=event.host,
        version=1,
        phase="preparing",
        plan=event.plan,
        ahead=event.items,
        prepared_at=event.at,
        standings=event.plan.standings,
        holds_results=event.plan.holds_results,
        run=None if event.plan.group is None else GroupRun(empty_since=event.at),
    )


def replay(events: Iterable[Event]) -> Room | None:
    """Fold a whole log; None for an empty one."""
    remaining = iter(events)
    first = next(remaining, None)
    if first is None:
        return None
    if not isinstance(first, ReviewPrepared):
        raise TypeError(f"a log begins with ReviewPrepared, not {type(first).__name__}")
    return reduce(apply, remaining, begin(first))


def _changed(room: Room, event: Event) -> Room:
    match event:
        case SeatEntered():
            return _with_player(room, _entered(event))
        case PlayerRenamed():
            return _with_player(room, replace(room.players[event.player], handle=event.handle))
        case SeatLinked():
            return _with_player(room, replace(room.players[event.player], owner=event.owner))
        case PlayerForgotten():
            return _with_former_player(room, event)
        case PlayerRemoved():
            return _without_player(room, event.player)
        case RoundOpened():
            return _opened(room, event)
        case RoundClosed():
            return _closed(room, event)
        case ResultShown():
            return _shown(room, event)
        case RecordShown():
            return _shown(round_folding.in_room(room, event), event)
        case ItemSwapped():
            return _with_place(room, event.position, (event.item,))
        case ItemAdded():
            return with_added(room, event)
        case ItemDropped():
            return _with_place(room, event.position, ())
        case DoorOpened():
            return replace(room, phase="gathering", door_code=event.door_code)
        case StandingsSet():
            return replace(room, standings=event.on)
        case HoldingSet():
            return replace(room, holds_results=event.on)
        case ReviewEnded():
            return _ended(room, event)
        case ReviewPrepared() | PlayerReady() | PauseAsked() | PauseEnded() | PlayerLeft() | PlayerReturned():
            return room
        case _:
            return _changed_beside(room, event)


BesideEvent = (
    BenchEvent
    | ChangeEvent
    | CreditEvent
    | HostEvent
    | StationEvent
    | TalkEvent
    | TimeEvent
    | round_folding.RoundEvent
)


def _changed_beside(room: Room, event: BesideEvent) -> Room:
    """The room after an event that is folded in a module of its own."""
    match event:
        case TalkOpened() | AgainOpened() | AgainClosed() | TwinAdded():
            return talk_folding.after(room, event)
        case BenchTaken() | BenchesDrawn() | BenchRenamed() | BenchAnswered():
            return bench_folding.after(room, event)
        case EntryClaimed() | ClaimMissed() | EntryAssigned() | RosterSet():
            return credit.after(room, event)
        case ItemRekeyed() | KeyRestored() | ItemFlagged() | FlagTakenBack() | FlagsSettled():
            return change_folding.after(room, event)
        case StationsOpened() | StationAnswered() | BellRung() | StationTimeAdded() | StationShown():
            return station_folding.after(room, event)
        case _ if isinstance(event, TimeEvent):
            return time_folding.after(room, event)
        case ReviewHandedOver() | ReviewRenamed() | ReviewChanged() | ItemMoved():
            return host_folding.after(room, event)
        case _:
            return round_folding.in_room(room, event)


def _with_place(room: Room, position: int, instead: tuple[Item, ...]) -> Room:
    """Put these in the place of an item ahead; if that was a twin, it is none any more."""
    gone = room.ahead[position].id
    twins = {item: number for item, number in room.twins.items() if item != gone}
    ahead = (*room.ahead[:position], *instead, *room.ahead[position + 1 :])
    return replace(room, ahead=ahead, twins=twins)


def _ended(room: Room, event: ReviewEnded) -> Room:
    rounds = shown_up_to(room.rounds, len(room.rounds), event.at)
    return replace(room, phase="finished", finished_at=event.at, rounds=rounds)


def _closed(room: Room, event: RoundClosed) -> Room:
    closed = round_folding.apply(room.rounds[event.round - 1], event)
    after = replace(room, phase="closed", rounds=(*room.rounds[:-1], closed))
    return after if room.holds_results else _shown(after, event)


def _shown(room: Room, event: RoundClosed | ResultShown | RecordShown) -> Room:
    return replace(room, rounds=shown_up_to(room.rounds, event.round, event.at))


def _entered(event: SeatEntered) -> Player:
    return Player(
        id=event.player,
        handle=event.handle,
        key_hash=event.key_hash,
        from_round=event.from_round,
        owner=event.owner,
    )


def _with_player(room: Room, player: Player) -> Room:
    return copying.changed(room, players=roster_of(room.players).with_player(player))


def _with_former_player(room: Room, event: PlayerForgotten) -> Room:
    room = time_folding.without_time_of(room, event.player)
    known = room.players.get(event.player)
    if known is None:  # sent out before
        return room
    former = replace(known, handle=event.handle, key_hash="", owner="", factor_percent=100, always_since=None)
    bench = room.benches.get(event.player, "")
    unclaimed = credit.without_player(room, event.player)
    return station_folding.with_rounds(
        _with_player(unclaimed, former),
        lambda one: change_folding.without_flag_text(
            round_folding.with_known_words(one, event.player, bench), event.player
        ),
    )


def _without_player(room: Room, player: str) -> Room:
    # Their answers go too, so that no count, mean or mark can still hold them; the log keeps everything.
    players = {key: value for key, value in room.players.items() if key != player}
    benches = {key: bench for key, bench in room.benches.items() if key != player}
    known = replace(credit.without_player(room, player), players=players, benches=benches)
    return station_folding.with_rounds(
        known,
        lambda one: time_folding.without_times_taken(
            change_folding.without_flag(round_folding.without_answer(one, player), player), player
        ),
    )


def _opened(room: Room, event: RoundOpened) -> Room:
    item = room.ahead[0]
    opened = Round(
        number=event.round,
        item=item,
        opened_at=event.at,
        closes_at=event.closes_at,
        limit_ms=limit_ms(room.plan, item),
    )
    return replace(room, phase="answering", ahead=room.ahead[1:], rounds=(*room.rounds, opened))
