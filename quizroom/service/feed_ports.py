"""What calendar feeds need from storage."""

from dataclasses import dataclass
from datetime import datetime
from typing import Protocol


@dataclass(frozen=True, slots=True, kw_only=True)
class KeptFeed:
    """A player's feed. `told` is what it last said, as its writer keeps it; `at` is local time, "HH:MM"."""

    player: str
    id: str
    at: str
    told: bytes


class FeedStore(Protocol):
    """Calendar feeds, at most one of a player; of secrets only hashes. Writes may raise `NotStored`."""

    def open_feed(self, feed: KeptFeed, secret_hash: str, now: datetime) -> None:
        """Keep a feed in place of the player's one before, whose secret is worth nothing from now on."""

    def close_feed(self, player: str) -> None:
        """Let the player's secret open nothing any more; without a feed this changes nothing."""

    def feed_of_secret(self, secret_hash: str) -> KeptFeed | None:
        """The feed that this secret opens, if any."""

    def feed_of_player(self, player: str) -> KeptFeed | None:
        """The player's feed, if there is one."""

    def keep_told(self, player: str, told: bytes) -> None:
        """Remember what the feed has said."""
