"""A class that several tests may share."""

from collections.abc import Iterator

import pytest

from tests import serving
from tests.live.lesson import Lesson, gathered


@pytest.fixture(scope="module")
def lesson(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Lesson]:
    """One class with its first round open; these tests leave it as it is, answers aside."""
    server = serving.start(tmp_path_factory.mktemp("lines") / "data")
    lesson = gathered(server, ["ada", "bo"])
    lesson.open_next()
    yield lesson
    lesson.hang_up()
    server.stop()
