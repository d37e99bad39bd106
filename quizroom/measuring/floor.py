"""The floor: plain websockets that know nothing of reviews, with the same commits as a room makes.

A program of its own: `python -m quizroom.measuring.floor FOLDER GATHER_MS`. The load client tells it
which bytes to send, so that every byte is one that quizroom sends as well:

    J...  join: commit, answer with the ready reply     A...  answer: commit, answer with the ready ack
    R...  what joins are answered with                  K...  what answers are answered with
    T...  a count for everybody, twice a second while answers come in
    B...  broadcast the rest                            O...  send the rest to each by itself
"""

import asyncio
import sqlite3
import sys
from pathlib import Path

from quizroom.realtime.broadcast import TALLY_EVERY_S

BACKLOG = 4096
BODY = b"x" * 190
"""About as long as the stored event of an answer."""


class Commits:
    """Gathers writers for some milliseconds and commits them in one transaction, as a room does."""

    def __init__(self, folder: Path, gather_s: float) -> None:
        """Open a database with the settings of quizroom's own."""
        self._database = sqlite3.connect(folder / "floor.sqlite", isolation_level=None)
        for pragma in ("journal_mode=WAL", "synchronous=FULL"):
            self._database.execute(f"PRAGMA {pragma}")
        self._database.execute("CREATE TABLE events (version INTEGER PRIMARY KEY, body BLOB)")
        self._gather_s = gather_s
        self._waiting: list[asyncio.Future[None]] = []

    async def durable(self) -> None:
        """Return once a row is committed."""
        done: asyncio.Future[None] = asyncio.get_running_loop().create_future()
        self._waiting.append(done)
        if len(self._waiting) == 1:
            asyncio.get_running_loop().call_later(self._gather_s, self._commit)
        await done

    def _commit(self) -> None:
        waiting, self._waiting = self._waiting, []
        self._database.execute("BEGIN")
        self._database.executemany("INSERT INTO events (body) VALUES (?)", [(BODY,)] * len(waiting))
        self._database.execute("COMMIT")
        for done in waiting:
            if not done.done():
                done.set_result(None)


async def main(folder: Path, gather_s: float) -> None:
    """Serve until killed."""
    from websockets.asyncio.server import (  # noqa: PLC0415 - an optional package: the extra `bench`
        ServerConnection,
        broadcast,
        serve,
    )

    commits = Commits(folder, gather_s)
    members: set[ServerConnection] = set()
    ready = {"R": "", "K": "", "T": ""}
    news = asyncio.Event()

    async def carry_out(line: ServerConnection, said: str) -> None:
        match said[:1]:
            case "A":
                await commits.durable()
                await line.send(ready["K"])
                news.set()
            case "J":
                await commits.durable()
                members.add(line)
                await line.send(ready["R"])
            case "B":
                broadcast(members, said[1:])
            case "O":
                for member in members:
                    await member.send(said[1:])
            case kind:
                ready[kind] = said[1:]

    async def attend(line: ServerConnection) -> None:
        async for said in line:
            await carry_out(line, said if isinstance(said, str) else said.decode())
        members.discard(line)

    async def count() -> None:
        while True:
            await news.wait()
            await asyncio.sleep(TALLY_EVERY_S)
            news.clear()
            broadcast(members, ready["T"])

    counting = asyncio.create_task(count())
    async with serve(attend, "127.0.0.1", 0, backlog=BACKLOG, compression=None, max_queue=None) as server:
        port = next(iter(server.sockets)).getsockname()[1]
        sys.stdout.write(f"floor listens on {port}\n")
        sys.stdout.flush()
        await counting


if __name__ == "__main__":
    asyncio.run(main(Path(sys.argv[1]), float(sys.argv[2]) / 1000))
