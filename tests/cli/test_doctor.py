"""The doctor finds what is wrong, says what to do, and changes nothing."""

import http.server
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest

from quizroom.cli import checkup
from quizroom.cli.checkup import Finding
from quizroom.settings import Settings
from tests.cli.test_commands import run


def found(check: checkup.Check, settings: Settings) -> list[Finding]:
    return list(check(settings))


def states(check: checkup.Check, settings: Settings) -> list[str]:
    return [finding.state for finding in found(check, settings)]


def test_a_sound_data_folder_and_database_are_well(tmp_path: Path) -> None:
    tmp_path.chmod(0o700)
    settings = Settings(data=tmp_path)
    assert set(states(checkup.data_folder_is_usable, settings)) <= {"well", "mind"}
    assert states(checkup.database_answers, settings) == ["well"]
    assert states(checkup.content_is_readable, settings) == ["well"]


def test_a_data_folder_that_others_may_read_is_to_be_minded(tmp_path: Path) -> None:
    tmp_path.chmod(0o755)
    minded = [f for f in found(checkup.data_folder_is_usable, Settings(data=tmp_path)) if f.state == "mind"]
    assert [f"chmod 700 {tmp_path}" in finding.remedy for finding in minded[-1:]] == [True]


def test_a_data_folder_that_is_a_file_is_wrong(tmp_path: Path) -> None:
    (tmp_path / "file").touch()
    settings = Settings(data=tmp_path / "file")
    assert states(checkup.data_folder_is_usable, settings) == ["wrong"]
    assert states(checkup.database_answers, settings) == ["wrong"]


def test_content_with_mistakes_is_wrong(tmp_path: Path) -> None:
    (finding,) = found(checkup.content_is_readable, Settings(data=tmp_path, content=tmp_path))
    assert finding.state == "wrong"
    assert "content check" in finding.remedy


def test_a_room_too_large_for_the_open_files_is_to_be_minded(tmp_path: Path) -> None:
    resource = pytest.importorskip("resource")
    before = resource.getrlimit(resource.RLIMIT_NOFILE)
    (finding,) = found(checkup.enough_files_may_be_open, Settings(data=tmp_path, capacity=1))
    assert finding.state == "well"
    assert resource.getrlimit(resource.RLIMIT_NOFILE) == before


@pytest.fixture
def other_server() -> Iterator[str]:
    """Something that answers, but is no quizroom and keeps no sockets."""

    class Answers(http.server.BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            self.send_response(200)
            self.end_headers()

        def log_message(self, *_: object) -> None:
            pass

    with http.server.ThreadingHTTPServer(("127.0.0.1", 0), Answers) as server:
        threading.Thread(target=server.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{server.server_port}"
        server.shutdown()


def test_a_proxy_that_lets_no_socket_through_is_to_be_minded(tmp_path: Path, other_server: str) -> None:
    findings = found(checkup.address_leads_here, Settings(data=tmp_path, address=other_server))
    assert [finding.state for finding in findings] == ["mind", "well", "well", "mind"]
    assert "Upgrade" in findings[-1].remedy


def test_an_address_where_nobody_answers_is_wrong(tmp_path: Path) -> None:
    findings = found(checkup.address_leads_here, Settings(data=tmp_path, address="http://127.0.0.1:9"))
    assert [finding.state for finding in findings] == ["mind", "wrong"]


def test_without_an_address_there_is_nothing_to_ask(tmp_path: Path) -> None:
    assert states(checkup.address_leads_here, Settings(data=tmp_path)) == ["mind"]


def test_everything_that_is_not_well_says_what_to_do(tmp_path: Path) -> None:
    settings = Settings(data=tmp_path, content=tmp_path, address="http://127.0.0.1:9")
    findings = list(checkup.checkup(settings))
    assert all(bool(finding.remedy) == (finding.state != "well") for finding in findings)


def test_the_command_ends_with_one_only_if_something_is_wrong(tmp_path: Path) -> None:
    bad = run("doctor", "--data", str(tmp_path), "--content", str(tmp_path))
    assert bad.exit_code == 1
    assert "WRONG  The content cannot be used" in bad.output
