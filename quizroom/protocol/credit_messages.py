"""The message of a player in a review for credit."""

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from quizroom.protocol.fields import MessageId


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimIdentity:
    """Player: this institutional id is mine. No reply and no view ever repeats it."""

    id: MessageId
    type: Literal["claim_identity"]
    institutional_id: Annotated[str, Field(min_length=1, max_length=100)]
