"""`quizroom hosts`, over a data folder that no server runs on."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from quizroom.cli import main
from quizroom.pages.host_parts import entry_over, hosts_over
from quizroom.service.host_ports import FIRST_OWNER
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.system_clock import SystemClock
from tests.storage.databases import url_in
from tests.storage.entries import laid_out

PASSWORD = "bursa ochre lantern Tuesday"  # noqa: S105 - of nobody


def run(folder: Path, *arguments: str) -> Result:
    return CliRunner().invoke(main, ["hosts", *arguments, "--data", str(folder)], catch_exceptions=False)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """The data folder of a server with two owners, one of them with an assistant and a review."""
    for name, more in (
        ("Dr. M. Sorrel", ["--role", "owner"]),
        ("T. Bracken", ["--role", "assistant", "--helps", "dr. m. sorrel"]),
    ):
        link = run(tmp_path, "add", *more).output.strip()
        engine = open_database(url_in(tmp_path))
        hosts = hosts_over(engine, clock=SystemClock())
        host = hosts.accept(link.rpartition("/invitation/")[2], name=name, password=PASSWORD)
        if host.role == "owner":
            SqlEventLog(engine).append([laid_out("room-1", host=host.id)])
        engine.dispose()
    return tmp_path


def test_hosts_are_listed_with_their_roles(folder: Path) -> None:
    assert run(folder, "list").output.splitlines() == [
        "Dr. M. Sorrel: owner, comes in by password",
        "Host: owner, comes in by link",
        "T. Bracken: assistant of Dr. M. Sorrel, comes in by password",
    ]


def test_a_host_is_let_in_anew_by_a_link_that_is_printed(folder: Path) -> None:
    key = run(folder, "reset", "T. BRACKEN").output.strip().rpartition("/desk/enter/")[2]
    engine = open_database(url_in(folder))
    entry = entry_over(engine, clock=SystemClock())
    host = entry.host_of_token(entry.spend(key) or "")
    assert host is not None
    assert (host.name, host.has_password) == ("T. Bracken", False)
    engine.dispose()


def test_the_reviews_and_assistants_of_who_is_removed_go_where_it_is_said(folder: Path) -> None:
    said = run(folder, "remove", "Dr. M. Sorrel", "--reviews-to", "Host").output
    assert said == "Dr. M. Sorrel is no host any more; 1 review went to Host.\n"
    engine = open_database(url_in(folder))
    assert SqlEventLog(engine).rooms_of_host(FIRST_OWNER) == ("room-1",)
    engine.dispose()
    assert "T. Bracken: assistant of Host" in run(folder, "list").output


@pytest.mark.parametrize(
    "arguments,why",
    [
        (("reset", "Nobody"), "There is no such host"),
        (("remove", "Host", "--reviews-to", "Dr. M. Sorrel"), "first owner cannot be removed"),
        (("remove", "Dr. M. Sorrel", "--reviews-to", "T. Bracken"), "Name one of the owners"),
        (("add", "--role", "assistant", "--helps", "T. Bracken"), "Name one of the owners"),
    ],
)
def test_what_cannot_be_done_is_told_and_changes_nothing(
    folder: Path, arguments: tuple[str, ...], why: str
) -> None:
    before = run(folder, "list").output
    refused = run(folder, *arguments)
    assert refused.exit_code == 1
    assert why in refused.output
    assert run(folder, "list").output == before
