"""What every test may ask for, and the rule that in CI nothing is skipped."""

import gc
import os
from collections.abc import Generator, Iterator, Mapping
from pathlib import Path
from types import MappingProxyType
from typing import TYPE_CHECKING

import pytest
from hypothesis import HealthCheck, settings

from tests import browsing, long_files, services, serving

if TYPE_CHECKING:
    from playwright.sync_api import Browser

FOLDER_MARKERS = ("browser", "house", "live")


def pytest_configure() -> None:
    """Judge properties by what they say, not by how busy this machine is; CI has a profile of its own."""
    settings.register_profile("any machine", deadline=None, suppress_health_check=[HealthCheck.too_slow])
    if "CI" not in os.environ:
        settings.load_profile("any machine")


@pytest.hookimpl(wrapper=True)
def pytest_collection() -> Generator[None, object, object]:
    """Let the collector of memory look at what tests make alone, not again and again at all test files."""
    gc.disable()
    try:
        return (yield)
    finally:
        gc.enable()
        gc.collect()
        gc.freeze()


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Put long files first, and mark tests by folder: `-m "not live and not browser"` is the quick part."""
    items.sort(key=lambda item: long_files.place(item.path))
    for item in items:
        for folder in FOLDER_MARKERS:
            if folder in item.path.parts:
                item.add_marker(folder)


@pytest.hookimpl(optionalhook=True)
def pytest_xdist_make_scheduler(config: pytest.Config, log: object) -> object:
    """With `--dist loadfile`: let files that would make the same costly thing go to the same process."""
    if config.getoption("dist") != "loadfile":
        return None
    from tests.scheduling import FilesTogether  # noqa: PLC0415 - a run in one process needs no pytest-xdist

    return FilesTogether(config, log)


def pytest_make_parametrize_id(val: object, argname: str) -> str | None:
    """Name cases of bytes by number: some are masked by chance, and all processes must agree on names."""
    return argname if isinstance(val, bytes) else None


def refuse_skip(report: pytest.TestReport | pytest.CollectReport) -> None:
    """Turn a skip into a failure where nothing may be skipped; an expected failure is no skip."""
    forbidden = os.environ.get("QUIZROOM_TESTS_SKIP_NOTHING") == "1"
    if forbidden and report.skipped and not hasattr(report, "wasxfail"):
        reason = report.longrepr[2] if isinstance(report.longrepr, tuple) else str(report.longrepr)
        report.outcome = "failed"
        report.longrepr = f"{reason}\nNothing may be skipped here: QUIZROOM_TESTS_SKIP_NOTHING=1"


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport() -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """Look at every test's report."""
    report = yield
    refuse_skip(report)
    return report


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report() -> Generator[None, pytest.CollectReport, pytest.CollectReport]:
    """Look at every file's report: a whole file can be skipped too."""
    report = yield
    refuse_skip(report)
    return report


@pytest.fixture
def start_server(tmp_path: Path) -> Iterator[serving.StartServer]:
    """Start as many servers as a test needs: `start_server()`, or again over the same data and port.

    Each is ended with the test.
    """
    started: list[serving.Server] = []

    def start(
        data: Path = tmp_path / "data",
        *,
        port: int = 0,
        arguments: tuple[str, ...] = (),
        settings: Mapping[str, str] = MappingProxyType({}),
    ) -> serving.Server:
        started.append(serving.start(data, port=port, arguments=arguments, settings=settings))
        return started[-1]

    yield start
    for server in started:
        server.stop()


@pytest.fixture
def server(start_server: serving.StartServer) -> serving.Server:
    """One running server over an empty data folder."""
    return start_server()


@pytest.fixture(scope="session")
def postgresql() -> Iterator[services.PostgreSql]:
    """One PostgreSQL for the whole run; each test takes a database of its own."""
    cluster = services.new_cluster() or pytest.skip(services.NO_POSTGRESQL)
    yield cluster
    services.remove_cluster(cluster)


@pytest.fixture
def redis() -> Iterator[services.Redis]:
    """A Redis for one test, which may end it and start it again."""
    started = services.new_redis() or pytest.skip(services.NO_REDIS)
    yield started
    started.stop()


@pytest.fixture(scope="session")
def require_browser() -> str:
    """The path of a browser; without one the test is skipped and says why."""
    return browsing.installed_browser() or pytest.skip(browsing.NO_BROWSER)


@pytest.fixture(scope="session")
def browser(require_browser: str) -> "Iterator[Browser]":
    """One Chromium for the whole run; a test makes a context of its own for each person at a screen."""
    from playwright.sync_api import sync_playwright  # noqa: PLC0415 - 0.3 s that other tests do not need

    with sync_playwright() as playwright:
        launched = playwright.chromium.launch(
            executable_path=require_browser, args=list(browsing.LAUNCH_ARGUMENTS)
        )
        yield launched
        launched.close()


@pytest.fixture(scope="session")
def axe_source() -> str:
    """The script that looks for barriers in a page: run it with `page.evaluate`, then `axe.run(...)`."""
    if not browsing.AXE.exists():
        pytest.skip("web/node_modules holds no axe-core: the pages were not built on this machine")
    return browsing.AXE.read_text(encoding="utf-8")
