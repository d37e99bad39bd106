"""Fields that messages share, each no longer than it may be."""

from typing import Annotated

from pydantic import Field

MessageId = Annotated[str, Field(min_length=1, max_length=64)]
DoorCode = Annotated[str, Field(min_length=1, max_length=32)]
RoomId = Annotated[str, Field(min_length=1, max_length=64)]
PlayerId = Annotated[str, Field(min_length=1, max_length=64)]
Handle = Annotated[str, Field(max_length=200)]
SeatKey = Annotated[str, Field(min_length=1, max_length=128)]
PlayerKey = Annotated[str, Field(pattern=r"^([a-z2-7]{16})?$")]
"""A player's own key, or "" where no history is to be kept."""
TimeSecret = Annotated[str, Field(pattern=r"^[0-9a-f]{32}$")]
"""What a private link brings: 128 random bits in hex."""
LetterOrNone = Annotated[str, Field(max_length=1)]
Words = Annotated[str, Field(max_length=120)]
RoundNumber = Annotated[int, Field(ge=1, le=1000)]
RoundOrNone = Annotated[int, Field(ge=0, le=1000)]
"""A round, or 0 before the first."""
Title = Annotated[str, Field(max_length=120)]
RosterId = Annotated[str, Field(max_length=64)]
"""A class roster, or "" where a review is not for credit."""
CourseId = Annotated[str, Field(max_length=80)]
Seconds = Annotated[int, Field(ge=5, le=3600)]
