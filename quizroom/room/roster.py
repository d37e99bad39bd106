"""The players of a room, found by id, by seat key, and by handle without looking at everybody."""

from collections.abc import ItemsView, Iterator, KeysView, Mapping, ValuesView

from quizroom.room.growing import with_one
from quizroom.room.handles import folded
from quizroom.room.state import Player


class Roster(Mapping[str, Player]):
    """Players by id, in the order in which they came."""

    __slots__ = ("_by_handle", "_handles", "_keys", "_players")

    def __init__(
        self, players: Mapping[str, Player], keys: Mapping[str, str], handles: Mapping[str, str]
    ) -> None:
        """`keys` and `handles` lead from the hash of a seat key, and from a folded handle, to the id."""
        self._players, self._keys, self._handles = players, keys, handles
        self._by_handle: tuple[Player, ...] | None = None

    def __getitem__(self, player: str) -> Player:
        return self._players[player]

    def __contains__(self, player: object) -> bool:
        return player in self._players

    def __len__(self) -> int:
        return len(self._players)

    def __iter__(self) -> Iterator[str]:
        return iter(self._players)

    def keys(self) -> KeysView[str]:
        """All ids."""
        return self._players.keys()

    def values(self) -> ValuesView[Player]:
        """Everybody."""
        return self._players.values()

    def items(self) -> ItemsView[str, Player]:
        """Everybody with the id."""
        return self._players.items()

    def by_handle(self) -> tuple[Player, ...]:
        """Everybody in the order in which people look for handles; found once, when it is first asked for."""
        if self._by_handle is None:
            in_order = sorted(self.values(), key=lambda player: (player.handle.casefold(), player.id))
            self._by_handle = tuple(in_order)
        return self._by_handle

    def with_player(self, player: Player) -> "Roster":
        """The roster with somebody new, or somebody known who has changed."""
        players = with_one(self._players, player.id, player)
        if player.id in self._players:
            return roster_of(dict(players))
        keys = with_one(self._keys, player.key_hash, player.id)
        return Roster(players, keys, with_one(self._handles, folded(player.handle), player.id))

    def of_key(self, key_hash: str) -> Player | None:
        """Whoever holds this seat key."""
        player = self._keys.get(key_hash)
        return None if player is None else self._players[player]

    def of_handle(self, handle: str) -> Player | None:
        """Whoever has a handle that could be taken for this one."""
        player = self._handles.get(folded(handle))
        return None if player is None else self._players[player]


def roster_of(players: Mapping[str, Player]) -> Roster:
    """The roster of any mapping of players; the earliest holds a key or handle that two should share."""
    if isinstance(players, Roster):
        return players
    latest_first = list(players.values())[::-1]
    keys = {player.key_hash: player.id for player in latest_first}
    return Roster(players, keys, {folded(player.handle): player.id for player in latest_first})
