"""`decide`: what follows from an order, or why it is refused. Pure; `now` is given."""

from datetime import datetime

from quizroom.room import (
    benches,
    credit,
    group,
    holding,
    host_orders,
    judging,
    laying_out,
    owners,
    rounds,
    seating,
    stations,
    talk,
    time_factors,
)
from quizroom.room.adding import AddItem, add
from quizroom.room.bench_commands import (
    AnswerForBench,
    BenchCommand,
    DrawBenches,
    RenameBench,
    SeatAtBench,
    TakeBench,
)
from quizroom.room.commands import (
    AddTime,
    CloseRound,
    Command,
    DropItem,
    EndReview,
    EnterSeat,
    GiveBackTime,
    HoldResults,
    OpenDoor,
    OpenRound,
    PauseRound,
    PrepareReview,
    RemovePlayer,
    RenamePlayer,
    ResumeRound,
    ShowRecord,
    ShowResult,
    ShowStandings,
    SubmitAnswer,
    SwapItem,
)
from quizroom.room.credit_commands import AssignEntry, ClaimEntry, CreditCommand, MissClaim, SetRoster
from quizroom.room.ending_own_time import refuse_unsaid_ending
from quizroom.room.events import Event
from quizroom.room.group_commands import GroupCommand
from quizroom.room.host_commands import ChangeReview, HandOverReview, HostCommand, MoveItem, RenameReview
from quizroom.room.judging import JudgingCommand
from quizroom.room.owner_commands import ForgetPlayer, LinkSeat, OwnerCommand
from quizroom.room.refusals import Refused
from quizroom.room.state import Room
from quizroom.room.station_commands import OpenStations, RingBell, StationCommand
from quizroom.room.talk_commands import AddTwin, CloseAgain, LetTalk, OpenAgain
from quizroom.room.time_commands import TimeCommand


def decide(room: Room, command: Command, now: datetime) -> tuple[Event, ...]:
    """Return the events that carry out `command`; none when it was carried out before.

    Raises:
        Refused: with the code of the reason; the room is unchanged.
    """
    if room.plan.imported and not isinstance(command, HostCommand):
        raise Refused("imported")
    events = _decided(room, command, now)
    refuse_unsaid_ending(room, command, events, now)
    return benches.with_drawn_benches(room, events)


def _decided(room: Room, command: Command, now: datetime) -> tuple[Event, ...]:
    match command:
        case SubmitAnswer(again=True):
            return talk.submit_again(room, command, now)
        case SubmitAnswer():
            return rounds.submit_answer(room, command, now)
        case EnterSeat():
            return seating.enter(room, command, now)
        case RenamePlayer():
            return seating.rename(room, command)
        case RemovePlayer():
            return seating.remove(room, command, now)
        case OpenRound():
            return rounds.open_next(room, command, now)
        case PauseRound() | ResumeRound() | AddTime() | GiveBackTime():
            return _about_clock(room, command, now)
        case CloseRound():
            return rounds.close(room, command, now)
        case ShowRecord():
            return rounds.show_record(room, command, now)
        case LetTalk() | OpenAgain() | CloseAgain() | AddTwin():
            return talk.decide(room, command, now)
        case HoldResults() | ShowResult():
            return holding.decide(room, command, now)
        case SwapItem():
            return laying_out.swap(room, command)
        case DropItem():
            return laying_out.drop(room, command)
        case AddItem():
            return add(room, command)
        case OpenDoor():
            return laying_out.open_door(room, command, now)
        case ShowStandings():
            return laying_out.show_standings(room, command)
        case EndReview():
            return rounds.end(room, now)
        case PrepareReview():
            return laying_out.refuse_second_preparation()
        case _:
            return _beside_rounds(room, command, now)


BesideRounds = (
    StationCommand
    | OwnerCommand
    | BenchCommand
    | CreditCommand
    | JudgingCommand
    | HostCommand
    | TimeCommand
    | GroupCommand
)


def _beside_rounds(room: Room, command: BesideRounds, now: datetime) -> tuple[Event, ...]:
    """Orders that have a module of their own each."""
    match command:
        case LinkSeat() | ForgetPlayer():
            return owners.decide(room, command, now)
        case RenameBench() | TakeBench() | SeatAtBench() | DrawBenches() | AnswerForBench():
            return benches.decide(room, command, now)
        case ClaimEntry() | MissClaim() | AssignEntry() | SetRoster():
            return credit.decide(room, command, now)
        case _ if isinstance(command, JudgingCommand):
            return judging.decide(room, command, now)
        case OpenStations() | RingBell():
            return stations.decide(room, command, now)
        case _ if isinstance(command, TimeCommand):
            return time_factors.decide(room, command, now)
        case HandOverReview() | RenameReview() | ChangeReview() | MoveItem():
            return host_orders.decide(room, command, now)
        case _:
            return group.decide(room, command, now)


def _about_clock(
    room: Room, command: PauseRound | ResumeRound | AddTime | GiveBackTime, now: datetime
) -> tuple[Event, ...]:
    if stations.are_open(room):
        return stations.about_clock(room, command)
    match command:
        case PauseRound():
            return rounds.pause(room, command, now)
        case ResumeRound():
            return rounds.resume(room, command, now)
        case AddTime():
            return rounds.add_time(room, command)
        case GiveBackTime():
            return rounds.give_back(room, command, now)
