"""Players who keep a history: known by a key of their own, without account, name or address."""

import re
from dataclasses import dataclass
from datetime import datetime

from quizroom.service.hashing import hash_of_secret
from quizroom.service.player_ports import PlayerStore, Seat

KEY = re.compile(r"[a-z2-7]{16}")
"""80 random bits in base32 (RFC 4648, section 6), in small letters."""


class BadKey(Exception):
    """This cannot be a player's own key."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Players:
    """Knows players by their keys; keeps only the hash of a key."""

    store: PlayerStore

    def welcome(self, key: str, now: datetime) -> str:
        """The player with this key, who is made if there is none yet. Raises `BadKey`, `NotStored`."""
        player = player_of(key)
        self.store.see(player, now)
        return player

    def seats_of(self, player: str) -> tuple[Seat, ...]:
        """The seats of a player, those of the newest review first."""
        return self.store.seats_of(player)


def player_of(key: str) -> str:
    """The id of the player with this key, its hash, whether anything is kept of them or not.

    Raises:
        BadKey: the key is not well-formed.
    """
    if not KEY.fullmatch(key):
        raise BadKey
    return hash_of_secret(key)
