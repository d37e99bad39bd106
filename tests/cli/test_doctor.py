"""`quizroom doctor`, as an operator calls it."""

from pathlib import Path

import pytest

from tests.cli.test_commands import run
from tests.services import free_port
from tests.serving import Server


def test_a_running_server_is_found_well(server: Server) -> None:
    said = run("doctor", "--data", str(server.data), "--port", str(server.port), "--address", server.address)
    lines = said.output.splitlines()
    assert f"well    Server: It is ready at {server.address}." in lines
    assert "well    Database: It answers within" in said.output
    assert "well    Lines: Websockets get through." in lines
    assert "well    Lines: Long polling gets through." in lines
    # an address of this machine itself is the one thing amiss in a test
    faults = [line for line in lines if line.startswith("fault")]
    assert faults == [
        f"fault   Address: Players are told {server.address}, which leads each phone to itself."
    ]
    assert said.exit_code == 1
    assert "1 fault, " in lines[-1]


def test_each_finding_has_its_remedy_below_and_nothing_is_made(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("QUIZROOM_ADRESS", "https://review.example")
    data, port = tmp_path / "data", str(free_port())
    said = run("doctor", "--data", str(data), "--port", port, "--address", "https://review.example")
    lines = said.output.splitlines()
    first = lines.index("remark  Settings: QUIZROOM_ADRESS is no setting, so nobody reads it.")
    assert lines[first + 1] == "        Did you mean QUIZROOM_ADDRESS?"
    assert (
        f"remark  Server: No server answers at http://127.0.0.1:{port}, so how it is reached" in said.output
    )
    assert said.exit_code == 0
    assert lines[-1].startswith("0 faults, ")
    assert not data.exists()
