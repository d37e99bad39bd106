"""Two workers over one PostgreSQL and one Redis."""

import json
import time
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from urllib.request import urlopen

from tests.services import PostgreSql, Redis
from tests.serving import Server, StartServer


@dataclass
class Pair:
    """Two workers that share everything, and how to start one again."""

    start: Callable[[int, int], Server]
    workers: list[Server]

    def restart(self, which: int) -> None:
        """Start a worker that was killed, at its old port."""
        self.workers[which] = self.start(which, self.workers[which].port)


def pair_over(postgresql: PostgreSql, redis: Redis, start_server: StartServer, folder: Path) -> Pair:
    """Two workers over a new database, who hear of each other."""
    settings = {"QUIZROOM_DATABASE_URL": postgresql.new_database(), "QUIZROOM_FANOUT_URL": redis.url}

    def start(which: int, port: int = 0) -> Server:
        return start_server(folder / f"worker-{which}", port=port, settings=settings)

    with ThreadPoolExecutor(2) as both:
        made = Pair(start, list(both.map(start, range(2))))
    wait_for(lambda: all(remarks(worker) == [] for worker in made.workers))
    return made


def remarks(worker: Server) -> list[str]:
    """What a worker would have mended."""
    with urlopen(f"{worker.address}/readyz", timeout=5) as reply:  # noqa: S310 - the server of this test
        told: list[str] = json.load(reply)["remarks"]
        return told


def wait_for(holds: Callable[[], bool], seconds: float = 20.0) -> None:
    """Wait until something holds."""
    deadline = time.monotonic() + seconds
    while not holds():
        assert time.monotonic() < deadline, "it never came"
        time.sleep(0.05)
