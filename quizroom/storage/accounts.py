"""Hosts' keys and the server's heartbeat in a relational database."""

import threading
from datetime import datetime

from sqlalchemy import Engine, delete, insert, select, update

from quizroom.storage.moments import in_utc
from quizroom.storage.tables import entry_keys, heartbeat, host_tokens
from quizroom.storage.writing import reading, writing


class SqlAccounts:
    """`service.ports.Accounts` over SQLAlchemy Core."""

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()

    def add_entry_key(self, key_hash: str, host: str, expires_at: datetime) -> None:
        """Keep a one-time key until it is used or expires."""
        row = {"key_hash": key_hash, "host": host, "expires_at": expires_at}
        with writing(self._engine, self._turn) as connection:
            connection.execute(insert(entry_keys).values(row))

    def spend_entry_key(self, key_hash: str, now: datetime) -> str | None:
        """Use up a one-time key; whoever deletes the row has it."""
        this = entry_keys.c.key_hash == key_hash
        with writing(self._engine, self._turn) as connection:
            connection.execute(delete(entry_keys).where(entry_keys.c.expires_at <= now))
            host = connection.execute(select(entry_keys.c.host).where(this)).scalar()
            return host if connection.execute(delete(entry_keys).where(this)).rowcount == 1 else None

    def add_host_token(self, token_hash: str, host: str, now: datetime) -> None:
        """Keep the token of a host's browser."""
        with writing(self._engine, self._turn) as connection:
            connection.execute(insert(host_tokens).values(token_hash=token_hash, host=host, made_at=now))

    def host_of_token(self, token_hash: str, *, made_after: datetime) -> str | None:
        """The host to whom this token belongs, if any."""
        query = select(host_tokens.c.host).where(
            host_tokens.c.token_hash == token_hash, host_tokens.c.made_at > made_after
        )
        with reading(self._engine) as connection:
            return connection.execute(query).scalar()

    def drop_host_token(self, token_hash: str) -> None:
        """Let a token open nothing any more."""
        with writing(self._engine, self._turn) as connection:
            connection.execute(delete(host_tokens).where(host_tokens.c.token_hash == token_hash))

    def drop_tokens_of(self, host: str) -> None:
        """Let all tokens and one-time keys of a host open nothing any more."""
        with writing(self._engine, self._turn) as connection:
            connection.execute(delete(host_tokens).where(host_tokens.c.host == host))
            connection.execute(delete(entry_keys).where(entry_keys.c.host == host))

    def drop_tokens_before(self, made_before: datetime) -> None:
        """Remove tokens that are too old to open anything."""
        with writing(self._engine, self._turn) as connection:
            connection.execute(delete(host_tokens).where(host_tokens.c.made_at <= made_before))


class SqlHeartbeat:
    """`service.ports.Heartbeat` in one row."""

    def __init__(self, engine: Engine) -> None:
        """Use tables that `database.open_database` has made."""
        self._engine = engine
        self._turn = threading.Lock()

    def beat(self, now: datetime) -> None:
        """Write the one row, unless a worker with a later clock has; raises `NotStored`."""
        with writing(self._engine, self._turn) as connection:
            at = connection.execute(select(heartbeat.c.at).where(heartbeat.c.id == 1)).scalar()
            if at is None:
                connection.execute(insert(heartbeat).values(id=1, at=now))
            elif in_utc(at) < now:
                connection.execute(update(heartbeat).where(heartbeat.c.id == 1).values(at=now))

    def last_beat(self) -> datetime | None:
        """Read it."""
        with reading(self._engine) as connection:
            at: datetime | None = connection.execute(select(heartbeat.c.at)).scalar()
        return None if at is None else in_utc(at)
