"""Orders about whose history a seat belongs to."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class LinkSeat:
    """Let a seat belong to the history of `owner` (SHA-256 of a player's key, in hex), or to none if ""."""

    player: str
    owner: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ForgetPlayer:
    """Take out of the room whatever tells who sat in this seat; what was answered stays."""

    player: str


OwnerCommand = LinkSeat | ForgetPlayer
