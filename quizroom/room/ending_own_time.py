"""Steps that would end the time which single players still have: only by a host who says so."""

from collections.abc import Iterable
from datetime import datetime

from quizroom.room.commands import Command, EndReview, OpenRound, ShowRecord, ShowResult
from quizroom.room.events import Event, HoldingSet, RecordShown, ResultShown, ReviewEnded, RoundOpened
from quizroom.room.own_time import still_have_time
from quizroom.room.refusals import Refused
from quizroom.room.state import Room
from quizroom.room.talk_commands import LetTalk
from quizroom.room.talk_events import TalkOpened

ENDING = (TalkOpened, ResultShown, RecordShown, RoundOpened, ReviewEnded)


def refuse_unsaid_ending(room: Room, command: Command, events: Iterable[Event], now: datetime) -> None:
    """Refuse a step that ends somebody's own time in the closed round unless the order says that it does.

    So an old desk, or a second one, cannot end it by accident. In an open round results stay held as long as
    somebody has more time in it.
    """
    for event in events:
        ends = room.phase == "closed" and isinstance(event, ENDING)
        if ends and not _says_so(command) and still_have_time(room, now):
            raise Refused("own_time_runs")
        unholds = room.phase == "answering" and isinstance(event, HoldingSet) and not event.on
        if unholds and still_have_time(room, now):
            raise Refused("held_for_own_time")


def _says_so(command: Command) -> bool:
    ending = ShowResult | ShowRecord | OpenRound | EndReview | LetTalk
    return isinstance(command, ending) and command.ends_own_time
