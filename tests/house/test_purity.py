"""The pure core decides and says; the outside gives it the time, the seed and the content."""

import ast

import pytest

from tests.house.checkout import files, text
from tests.house.purity import ALLOWED_PACKAGES, OPENS_FILES, PURE, imports, impurities, is_pure

A_PURE_FILE = "quizroom/room/rules.py"


def test_the_pure_core_reaches_nothing_outside_itself() -> None:
    core = [path for path in files(".py", under=("quizroom/",)) if is_pure(path)]
    assert [finding for path in core for finding in impurities(path, text(path))] == []


def test_every_layer_of_the_pure_core_is_looked_at() -> None:
    core = [path for path in files(".py", under=("quizroom/",)) if is_pure(path)]
    looked_at = {path.removeprefix("quizroom/").removesuffix(".py").partition("/")[0] for path in core}
    assert looked_at >= set(PURE)


@pytest.mark.parametrize("path,package", ALLOWED_PACKAGES)
def test_a_package_allowed_in_the_core_is_still_used_there(path: str, package: str) -> None:
    taken = {use.what.partition(".")[0] for use in imports(ast.parse(text(path)))}
    assert package in taken


@pytest.mark.parametrize(
    "source",
    [
        "from datetime import datetime\nat = datetime.now()",
        "import datetime\nday = datetime.date.today()",
        "import time",
        "def f():\n    from time import monotonic",
        "import uuid",
        "import random\nrandom.shuffle([])",
        "from random import choice",
        "import random\nr = random.Random()",
        "from random import Random\nr = Random()",
        "import os",
        "from pathlib import Path\ndef f(p: Path):\n    return p.exists()",
        "open('x')",
        "def f(p):\n    return p.read_text()",
        "print('x')",
        "import pydantic",
        "from rapidfuzz import distance",
        "import flask",
    ],
)
def test_each_way_to_the_outside_is_found(source: str) -> None:
    assert len(impurities(A_PURE_FILE, source)) == 1


@pytest.mark.parametrize(
    "source",
    [
        "from datetime import datetime\ndef f(now: datetime):\n    return now > datetime(2026, 1, 1)",
        "import random\ndef f(seed):\n    return random.Random(seed).random()",
        "from random import Random\ndef f(random: Random):\n    return random.shuffle([])",
        "import json\nfrom quizroom.room.state import Room",
    ],
)
def test_what_is_given_may_be_used(source: str) -> None:
    assert impurities(A_PURE_FILE, source) == []


def test_one_module_alone_opens_files() -> None:
    source = "from pathlib import Path\ntext = Path('x').read_text()"
    assert impurities(OPENS_FILES, source) == []
    assert impurities("quizroom/knowledge/checks.py", source) != []
    assert impurities(OPENS_FILES, "import time") != []
