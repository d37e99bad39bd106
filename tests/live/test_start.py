"""Starting the server as a teacher does: what it says, how soon it is ready, and what if it cannot."""

import os
import resource
import subprocess
import sys
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests import serving

LIBRARIES = "flask_socketio, sqlalchemy, pydantic, eventlet, requests"
MOST_TIMES_THE_LIBRARIES = 3.0
"""Side by side, since seconds would tell of the machine; 1.6 to 1.8 times were measured."""
OUTSIDE_PYTHON = str(Path(sys.executable).resolve())


@pytest.fixture(scope="module")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[serving.Server]:
    """A server started whole, as a program that loads everything itself."""
    started = serving.start(tmp_path_factory.mktemp("start") / "data", python=sys.executable)
    yield started
    started.stop()


def failed_start(*arguments: str) -> str:
    """The words of a start that must fail."""
    command = [sys.executable, "-m", "quizroom", "serve", *arguments]
    ran = subprocess.run(command, capture_output=True, text=True, timeout=20, check=False)
    assert ran.returncode != 0
    assert "Traceback" not in ran.stderr
    return ran.stderr


def test_the_start_tells_where_the_pages_the_desk_and_the_data_are(server: serving.Server) -> None:
    said = server.log.read_text()
    assert f"quizroom is ready at {server.address}" in said
    assert server.desk_link.startswith(f"{server.address}/desk/enter/")
    assert str(server.data.resolve()) in said
    assert server.data.is_dir()


def test_a_started_server_is_well(server: serving.Server) -> None:
    with urllib.request.urlopen(f"{server.address}/healthz", timeout=5) as answer:  # noqa: S310 - our own server
        assert answer.status == 200


def test_the_start_shows_no_warning_of_the_machinery(server: serving.Server) -> None:
    said = server.log.read_text()
    assert "Warning" not in said
    assert "alembic" not in said


@pytest.mark.skipif(not Path("/proc/self/stat").exists(), reason="only Linux tells what a start has cost")
def test_a_second_start_costs_little_more_than_the_libraries_it_stands_on(tmp_path: Path) -> None:
    ratios = []
    for _ in range(3):  # the best of three: the first may compile
        libraries = seconds_of_libraries()
        started = serving.start(tmp_path / "data", python=OUTSIDE_PYTHON)
        ratios.append(seconds_of_work(started.process.pid) / libraries)
        started.stop()
    assert min(ratios) < MOST_TIMES_THE_LIBRARIES


def seconds_of_libraries() -> float:
    """What it costs on this machine, just now, to import the libraries alone."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    subprocess.run([sys.executable, "-W", "ignore", "-c", f"import {LIBRARIES}"], check=True)
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    return after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime


def seconds_of_work(process: int) -> float:
    """What a process has cost until now (proc(5), fields 14 and 15), however busy the machine is."""
    fields = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def test_a_port_in_use_is_told_with_the_way_out(server: serving.Server, tmp_path: Path) -> None:
    said = failed_start("--port", str(server.port), "--data", str(tmp_path / "other"))
    assert f"port {server.port}" in said
    assert "--port" in said


@pytest.mark.parametrize("port", ["70000", "-1"])
def test_an_impossible_port_is_told(port: str, tmp_path: Path) -> None:
    assert "port" in failed_start("--port", port, "--data", str(tmp_path / "data"))


def test_a_data_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    folder = tmp_path / "file" / "data"
    assert str(folder) in failed_start("--port", "0", "--data", str(folder))
