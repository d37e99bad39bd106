"""What the compose file tells the images of others, as processes: their command and health checks."""

import subprocess
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import pytest

from tests.live.proxied import COMPOSE
from tests.services import NO_REDIS, PostgreSql, free_port, listens, new_redis, wait_until

SERVICES: dict[str, Any] = COMPOSE["services"]


def test_the_command_of_redis_serves_and_keeps_nothing(tmp_path: Path) -> None:
    example = new_redis()
    if example is None or find_spec("redis") is None:
        pytest.skip(NO_REDIS)
    example.stop()
    from redis import Redis  # noqa: PLC0415 - an extra that may be missing

    name, *words = SERVICES["redis"]["command"]
    assert name == "valkey-server"
    port = free_port()
    process = subprocess.Popen([example.program, *words, "--port", str(port)], cwd=tmp_path)
    try:
        wait_until(lambda: listens(port), "Redis")
        with Redis(port=port) as client:
            assert client.config_get("save") == {"save": ""}
            assert client.config_get("appendonly") == {"appendonly": "no"}
            client.set("some", "thing")
    finally:
        process.terminate()
        process.wait(timeout=10)
    assert list(tmp_path.iterdir()) == []


def test_the_health_check_of_postgresql_tells_well_from_away(postgresql: PostgreSql) -> None:
    kind, name, *words = SERVICES["postgres"]["healthcheck"]["test"]
    assert (kind, name) == ("CMD", "pg_isready")

    def asked(port: int) -> int:
        command = [str(postgresql.programs / name), *words, "--host=127.0.0.1", f"--port={port}"]
        return subprocess.run(command, capture_output=True, check=False).returncode

    assert asked(postgresql.port) == 0
    assert asked(free_port()) == 2  # no response (PostgreSQL documentation, pg_isready)
