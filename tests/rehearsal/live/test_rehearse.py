"""`quizroom rehearse` against a real server, as a newcomer would start it."""

import re
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
import requests

from quizroom.cli.desk_link import new_desk_key
from quizroom.rehearsal.entry import desk_cookie
from quizroom.settings import Settings
from tests.serving import Server, StartServer

LIMIT_S = 90


def rehearse(data: Path, port: int, *arguments: str) -> subprocess.Popen[str]:
    command = [
        sys.executable,
        "-m",
        "quizroom",
        "rehearse",
        "--data",
        str(data),
        "--port",
        str(port),
        "--pace",
    ]
    return subprocess.Popen(
        [*command, "quick", *arguments], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
    )


def ended(process: subprocess.Popen[str]) -> str:
    """What it said, once it has ended."""
    said, _ = process.communicate(timeout=LIMIT_S)
    return said


def heard(process: subprocess.Popen[str], words: str) -> str:
    """Everything said up to the line with these words."""
    assert process.stdout is not None
    said = ""
    for line in process.stdout:
        said += line
        if words in line:
            return said
    raise AssertionError(f"never said {words!r}:\n{said}")


def report_of(said: str, server: Server) -> str:
    """The page of the report that a rehearsal names at its end."""
    named = re.search(r"report, in the host's browser: (\S+)", said)
    assert named, said
    cookie = desk_cookie(server.address, new_desk_key(Settings(data=server.data).database_url))
    answer = requests.get(named[1], headers={"Cookie": cookie}, timeout=LIMIT_S)
    assert answer.status_code == 200
    return answer.text


@pytest.fixture
def played(server: Server) -> str:
    process = rehearse(server.data, server.port, "--players", "14", "--rounds", "5")
    said = ended(process)
    assert process.returncode == 0, said
    return said


def test_a_demo_review_is_played_to_its_end(played: str, server: Server) -> None:
    assert f"{server.address}/wall/" in played
    assert f"{server.address}/desk/enter/" in played
    for number in range(1, 6):
        assert re.search(rf"Round {number}: \d+ of 1[3-5] answered, mean mark [01]\.\d\d", played), played
    # fourteen people, and the second device of one of them
    assert "Played 5 rounds with 15 players." in played
    acknowledged = re.search(r"(\d+) answers acknowledged, half of them within", played)
    assert acknowledged, played
    assert int(acknowledged[1]) >= 60, played
    assert "refused" not in played
    report = report_of(played, server)
    assert "Report of a review · rehearsal" in report
    # the struck item is in no number, the others have their marks although programs answer at once
    assert len(re.findall(r'class="range_at"', report)) >= 4
    assert len(re.findall(r'<article class="sheet"', report)) == 4


def test_a_server_that_is_killed_and_started_again_does_not_end_the_rehearsal(
    start_server: StartServer,
) -> None:
    server = start_server()
    process = rehearse(server.data, server.port, "--players", "8", "--rounds", "2")
    said = heard(process, "Round 1 of 2")
    server.kill()
    start_server(server.data, port=server.port)
    said += ended(process)
    assert process.returncode == 0, said
    assert "Played 2 rounds with 9 players." in said
    assert "refused" not in said


def test_ctrl_c_ends_the_review_and_says_so(server: Server) -> None:
    process = rehearse(server.data, server.port, "--players", "6", "--rounds", "30")
    heard(process, "Round 1 of 30")
    process.send_signal(signal.SIGINT)
    began = time.monotonic()
    said = ended(process)
    assert process.returncode == 0, said
    assert "The rehearsal is stopped and its review is ended." in said
    assert "Traceback" not in said
    assert time.monotonic() - began < 10


def test_without_a_server_it_says_how_to_start_one(tmp_path: Path) -> None:
    process = rehearse(tmp_path / "data", 9)
    said = ended(process)
    assert process.returncode == 1
    assert said.startswith("Error: No quizroom answers at http://127.0.0.1:9. Start it first")
    assert "python3 -m quizroom" in said


def test_with_the_data_of_another_server_it_asks_for_the_right_folder(server: Server, tmp_path: Path) -> None:
    process = rehearse(tmp_path / "elsewhere", server.port)
    said = ended(process)
    assert process.returncode == 1
    assert "--data FOLDER" in said
    assert "Traceback" not in said


def test_an_unknown_course_is_answered_with_those_there_are(server: Server) -> None:
    process = rehearse(server.data, server.port, "--course", "astronomy")
    said = ended(process)
    assert process.returncode == 1
    assert "There is no course list astronomy" in said
    assert "upper_limb_regional" in said
