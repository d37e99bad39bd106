"""Calendar feeds in a relational database, and in memory."""

import threading
from dataclasses import replace
from datetime import datetime

from sqlalchemy import ColumnElement, Engine, delete, insert, select, update

from quizroom.service.feed_ports import KeptFeed
from quizroom.storage.feed_tables import calendar_feeds
from quizroom.storage.writing import reading, writing


class SqlFeeds:
    """`service.feed_ports.FeedStore` over SQLAlchemy Core."""

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()

    def open_feed(self, feed: KeptFeed, secret_hash: str, now: datetime) -> None:
        """Keep a feed in place of the one before."""
        with writing(self._engine, self._turn) as connection:
            connection.execute(delete(calendar_feeds).where(calendar_feeds.c.player == feed.player))
            row = {
                "player": feed.player,
                "secret_hash": secret_hash,
                "id": feed.id,
                "at": feed.at,
                "told": feed.told,
                "made_at": now,
            }
            connection.execute(insert(calendar_feeds).values(row))

    def close_feed(self, player: str) -> None:
        """Let the player's secret open nothing any more."""
        with writing(self._engine, self._turn) as connection:
            connection.execute(delete(calendar_feeds).where(calendar_feeds.c.player == player))

    def feed_of_secret(self, secret_hash: str) -> KeptFeed | None:
        """The feed that this secret opens."""
        return self._found(calendar_feeds.c.secret_hash == secret_hash)

    def feed_of_player(self, player: str) -> KeptFeed | None:
        """The player's feed."""
        return self._found(calendar_feeds.c.player == player)

    def keep_told(self, player: str, told: bytes) -> None:
        """Remember what the feed has said."""
        with writing(self._engine, self._turn) as connection:
            change = update(calendar_feeds).where(calendar_feeds.c.player == player).values(told=told)
            connection.execute(change)

    def _found(self, which: ColumnElement[bool]) -> KeptFeed | None:
        query = select(calendar_feeds).where(which)
        with reading(self._engine) as connection:
            row = connection.execute(query).one_or_none()
        return None if row is None else KeptFeed(player=row.player, id=row.id, at=row.at, told=row.told)


class MemoryFeeds:
    """`service.feed_ports.FeedStore` in dictionaries."""

    def __init__(self) -> None:
        """Begin with none."""
        self._feeds: dict[str, KeptFeed] = {}
        self._secrets: dict[str, str] = {}

    def open_feed(self, feed: KeptFeed, secret_hash: str, now: datetime) -> None:  # noqa: ARG002 - the contract has it
        """Keep a feed in place of the one before."""
        self._feeds[feed.player] = feed
        self._secrets[feed.player] = secret_hash

    def close_feed(self, player: str) -> None:
        """Let the player's secret open nothing any more."""
        self._feeds.pop(player, None)
        self._secrets.pop(player, None)

    def feed_of_secret(self, secret_hash: str) -> KeptFeed | None:
        """The feed that this secret opens."""
        found = (player for player, known in self._secrets.items() if known == secret_hash)
        return self._feeds.get(next(found, ""))

    def feed_of_player(self, player: str) -> KeptFeed | None:
        """The player's feed."""
        return self._feeds.get(player)

    def keep_told(self, player: str, told: bytes) -> None:
        """Remember what the feed has said."""
        if player in self._feeds:
            self._feeds[player] = replace(self._feeds[player], told=told)
