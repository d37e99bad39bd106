"""A room with people at real screens in front of a real server."""

from collections.abc import Callable, Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser

from quizroom.cli.desk_link import new_desk_key
from quizroom.rehearsal.entry import desk_cookie
from quizroom.rehearsal.host import Host
from quizroom.settings import Settings
from tests import serving
from tests.browser.dealt import COURSE, FAMILIES
from tests.browser.screens import Screens
from tests.serving import Server

LayOut = Callable[..., Host]


@pytest.fixture(scope="session")
def server(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Server]:
    """One server for all: each test has rooms of its own."""
    started = serving.start(tmp_path_factory.mktemp("browser") / "data")
    yield started
    started.stop()


@pytest.fixture
def screens(browser: Browser, server: Server) -> Iterator[Screens]:
    """People at screens. At the end no page may have complained, nor asked another origin for anything."""
    people = Screens(browser, server.address)
    yield people
    complaints = [complaint for watch in people.watches for complaint in watch.complaints]
    people.close()
    assert complaints == []


@pytest.fixture
def host_cookie(server: Server) -> str:
    """The cookie of the host's browser."""
    return desk_cookie(server.address, new_desk_key(Settings(data=server.data).database_url))


@pytest.fixture
def lay_out(server: Server, host_cookie: str) -> Iterator[LayOut]:
    """Lay out a review and open its door, worked by a program where the desk's page is not what is tested."""
    hosts: list[Host] = []

    def lay_out(**plan: Any) -> Host:
        hosts.append(Host(server.address, host_cookie))
        hosts[-1].lay_out(
            **{
                "title": "HHC-KN 232",
                "course": {"id": COURSE, "families": FAMILIES},
                "rounds": 3,
                "seed": 1,
                **plan,
            }
        )
        return hosts[-1]

    yield lay_out
    for host in hosts:
        host.close()
