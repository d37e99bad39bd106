"""Messages of a host who leads a review that is prepared."""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from quizroom.protocol.fields import Handle, MessageId, PlayerId, RoundNumber, RoundOrNone, Words


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemStep:
    """Host: swap or drop an item that is still ahead; `item` guards against doing it twice."""

    id: MessageId
    type: Literal["swap_item", "drop_item"]
    position: Annotated[int, Field(ge=0, le=1000)]
    item: Annotated[str, Field(min_length=1, max_length=200)]


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundStep:
    """Host: a step of the review. `round` is the round it is meant for (for `open_round` the one to
    open, `public.round + 1`; before the first round 0; for `ring_bell` the turn that ends), so that a repeat
    cannot skip ahead.
    """

    id: MessageId
    type: Literal[
        "open_door",
        "open_round",
        "open_stations",
        "ring_bell",
        "pause_round",
        "resume_round",
        "close_round",
        "show_result",
        "show_record",
        "end_review",
    ]
    round: RoundOrNone
    ends_own_time: bool = False
    """Whether the host knows that it ends the time which single players still have."""


@dataclass(frozen=True, slots=True, kw_only=True)
class AddTime:
    """Host: lengthen the open round by so many seconds."""

    id: MessageId
    type: Literal["add_time"]
    seconds: Annotated[int, Field(ge=1, le=600)]


@dataclass(frozen=True, slots=True, kw_only=True)
class StrikeStep:
    """Host: take a round's item out of all marks, or put it back."""

    id: MessageId
    type: Literal["strike_item", "restore_item"]
    round: RoundNumber


@dataclass(frozen=True, slots=True, kw_only=True)
class RuleOnWords:
    """Host: accept or refuse typed words of a round, for everybody; the last ruling counts."""

    id: MessageId
    type: Literal["rule_on_words"]
    round: RoundNumber
    words: Words
    accept: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ShowStandings:
    """Host: standings on the wall on or off."""

    id: MessageId
    type: Literal["show_standings"]
    on: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldResults:
    """Host: keep the results of rounds that close from now on back until they are shown, or do not."""

    id: MessageId
    type: Literal["hold_results"]
    on: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class RenamePlayer:
    """Host: give a player another handle."""

    id: MessageId
    type: Literal["rename_player"]
    player: PlayerId
    handle: Handle


@dataclass(frozen=True, slots=True, kw_only=True)
class RemovePlayer:
    """Host: send a player out."""

    id: MessageId
    type: Literal["remove_player"]
    player: PlayerId


HostMessage = (
    ItemStep
    | RoundStep
    | AddTime
    | StrikeStep
    | RuleOnWords
    | ShowStandings
    | HoldResults
    | RenamePlayer
    | RemovePlayer
)
