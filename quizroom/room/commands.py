"""Orders to a room. Each may be refused by `rules.decide`."""

from dataclasses import dataclass

from quizroom.questions.model import Item
from quizroom.room.adding import AddItem
from quizroom.room.bench_commands import BenchCommand
from quizroom.room.change_commands import ChangeCommand
from quizroom.room.credit_commands import CreditCommand
from quizroom.room.group_commands import GroupCommand
from quizroom.room.host_commands import HostCommand
from quizroom.room.owner_commands import OwnerCommand
from quizroom.room.state import Certainty, Plan
from quizroom.room.station_commands import StationCommand
from quizroom.room.talk_commands import TalkCommand
from quizroom.room.time_commands import TimeCommand


@dataclass(frozen=True, slots=True, kw_only=True)
class PrepareReview:
    """Lay out a new review with its dealt items; the door is still shut."""

    plan: Plan
    items: tuple[Item, ...]
    host: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapItem:
    """Put another item in the place of `instead_of`, whose round has not been opened."""

    position: int
    instead_of: str
    item: Item


@dataclass(frozen=True, slots=True, kw_only=True)
class DropItem:
    """Leave out an item whose round has not been opened; `item` says which, lest two be dropped."""

    position: int
    item: str


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenDoor:
    """Let players in with this door code."""

    door_code: str


@dataclass(frozen=True, slots=True, kw_only=True)
class EnterSeat:
    """A new player takes a seat. `key_hash` is the SHA-256 of the seat's secret key, in hex.

    `owner` is that of the player's own key, if the seat is to belong to a history.
    """

    player: str
    handle: str
    key_hash: str
    owner: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RenamePlayer:
    """The host gives a player another handle."""

    player: str
    handle: str


@dataclass(frozen=True, slots=True, kw_only=True)
class RemovePlayer:
    """The host sends a player out; their answers no longer count. `by` is the name of the host."""

    player: str
    by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class OpenRound:
    """Open round `round` for answers; a repeat for a round already opened changes nothing."""

    round: int
    ends_own_time: bool = False
    """Whether the host knows that it ends the time which single players still have; so below."""


@dataclass(frozen=True, slots=True, kw_only=True)
class SubmitAnswer:
    """A player's choice for the open round; letters for options, words for typed formats.

    For an ordering all letters in order, for a matching a letter for each row, "" where none was chosen.
    """

    player: str
    round: int
    choice: tuple[str, ...] = ()
    typed: tuple[str, ...] = ()
    certainty: Certainty | None = None
    """How certain the player is, where that is asked for."""
    again: bool = False
    """Whether it is a second answer, after talking."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PauseRound:
    """Stop the clock; answers are still taken."""

    round: int


@dataclass(frozen=True, slots=True, kw_only=True)
class ResumeRound:
    """Let the clock run on with the time that was left."""

    round: int


@dataclass(frozen=True, slots=True, kw_only=True)
class AddTime:
    """Lengthen the open round, in seconds; `order` makes a repeat harmless."""

    seconds: int
    order: str


@dataclass(frozen=True, slots=True, kw_only=True)
class GiveBackTime:
    """Return to the round the time during which no server was there, in milliseconds.

    `order` names the outage, so that of several servers that come back only one returns it; empty for a
    single server.
    """

    ms: int
    order: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class CloseRound:
    """End answering: by the host, or by the alarm once the deadline and its grace are over."""

    round: int
    by_host: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldResults:
    """Keep the results of rounds that close from now on back until they are shown, or do not."""

    on: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowResult:
    """Show key, shares and marks of the closed round, which were held."""

    round: int
    ends_own_time: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowRecord:
    """Show the full record and the reasons for the closed round."""

    round: int
    ends_own_time: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class StrikeItem:
    """Take the item of a round out of all marks. `by` is the name of the host."""

    round: int
    by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RestoreItem:
    """Undo a strike. `by` is the name of the host."""

    round: int
    by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleOnWords:
    """The host accepts or refuses typed words of a round, once for everybody who wrote them."""

    round: int
    words: str
    accept: bool
    by: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowStandings:
    """Turn the standings on the wall on or off."""

    on: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class EndReview:
    """Finish the review; an open round is closed first."""

    ends_own_time: bool = False


Command = (
    PrepareReview
    | SwapItem
    | AddItem
    | DropItem
    | OpenDoor
    | EnterSeat
    | RenamePlayer
    | RemovePlayer
    | OpenRound
    | SubmitAnswer
    | PauseRound
    | ResumeRound
    | AddTime
    | GiveBackTime
    | CloseRound
    | HoldResults
    | ShowResult
    | ShowRecord
    | StrikeItem
    | RestoreItem
    | RuleOnWords
    | ShowStandings
    | EndReview
    | GroupCommand
    | OwnerCommand
    | BenchCommand
    | CreditCommand
    | ChangeCommand
    | HostCommand
    | TalkCommand
    | TimeCommand
    | StationCommand
)
