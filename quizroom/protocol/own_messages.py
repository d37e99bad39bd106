"""Messages about a host's own items in a review."""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from quizroom.protocol.fields import MessageId

ItemId = Annotated[str, Field(min_length=1, max_length=200)]
Position = Annotated[int, Field(ge=0, le=1000)]


@dataclass(frozen=True, slots=True, kw_only=True)
class AddOwnItem:
    """Host: put an item of one's own in this place among those ahead."""

    id: MessageId
    type: Literal["add_own_item"]
    position: Position
    own_item: ItemId


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapForOwn:
    """Host: put an item of one's own in the place of `item`, which guards against doing it twice."""

    id: MessageId
    type: Literal["swap_for_own"]
    position: Position
    item: ItemId
    own_item: ItemId


OwnMessage = AddOwnItem | SwapForOwn
