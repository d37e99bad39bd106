"""Messages about keys that the host changes, and about flags of players."""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from quizroom.protocol.fields import LetterOrNone, MessageId, RoundNumber, Words

ReasonText = Annotated[str, Field(max_length=400)]
"""Longer than the room takes, so that it can say how long a text may be."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RekeyItem:
    """Host: key another variant of an opened item, in place of the dealt key and of any before.

    `key` holds letters as an answer does; `terms` what may be typed where there are no options.
    """

    id: MessageId
    type: Literal["rekey_item"]
    round: RoundNumber
    key: Annotated[tuple[LetterOrNone, ...], Field(max_length=10)] = ()
    terms: Annotated[tuple[Words, ...], Field(max_length=20)] = ()
    reason: ReasonText = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class RestoreKey:
    """Host: let the key as dealt count again."""

    id: MessageId
    type: Literal["restore_key"]
    round: RoundNumber


@dataclass(frozen=True, slots=True, kw_only=True)
class SettleFlags:
    """Host: the flags of a round so far are dealt with, or are not after all."""

    id: MessageId
    type: Literal["settle_flags"]
    round: RoundNumber
    settled: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class FlagItem:
    """Player: an answer of this round looks wrong, with a few words or none. The host is not told who."""

    id: MessageId
    type: Literal["flag_item"]
    round: RoundNumber
    text: ReasonText = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class UnflagItem:
    """Player: take the flag back."""

    id: MessageId
    type: Literal["unflag_item"]
    round: RoundNumber


KeyMessage = RekeyItem | RestoreKey | SettleFlags
FlagMessage = FlagItem | UnflagItem
