"""The recipe of the image, step by step as processes: no engine builds it here, but what it says is done."""

import os
import pwd
import re
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest

from tests.house.checkout import ROOT
from tests.live.proxied import COMPOSE
from tests.services import free_port, wait_until

SERVER: dict[str, Any] = COMPOSE["services"]["quizroom"]
RECIPE: str = SERVER["build"]["dockerfile_inline"]
COPIES = re.findall(r"^COPY (?!--from)(.+) (\S+)$", RECIPE, re.MULTILINE)
INSTALL = re.findall(r"^RUN (pip install .+)$", RECIPE, re.MULTILINE)


@dataclass
class Image:
    """What the recipe leaves in `/usr/local`, and whoever runs it."""

    installed: Path
    rights: dict[str, Any]

    def environment(self, data: Path, port: int) -> dict[str, str]:
        """The variables of the compose file, for this machine."""
        named = {name: str(value) for name, value in SERVER["environment"].items()}
        packages = next(self.installed.glob("lib/python*/site-packages"))
        here = {
            "PATH": f"{self.installed / 'bin'}:{os.environ['PATH']}",
            "PYTHONPATH": str(packages),
            "QUIZROOM_DATA": str(data),
            "QUIZROOM_PORT": str(port),
            "QUIZROOM_ADDRESS": f"http://127.0.0.1:{port}",
        }
        return {**named, **here}


@pytest.fixture(scope="module")
def image() -> Iterator[Image]:
    base = Path(tempfile.mkdtemp(prefix="quizroom-image-"))
    base.chmod(0o755)
    copy_as_told(base / "source")
    install_as_told(base)
    yield Image(base / "installed", another_user())
    shutil.rmtree(base, ignore_errors=True)


def copy_as_told(source: Path) -> None:
    """What each COPY of the recipe takes, and nothing else."""
    for taken, target in COPIES:
        for pattern in taken.split():
            found = sorted(ROOT.glob(pattern))
            assert found, pattern
            for path in found:
                into = source / target / path.name if target.endswith("/") else source / target
                into.parent.mkdir(parents=True, exist_ok=True)
                if path.is_dir():
                    shutil.copytree(path, into, ignore=shutil.ignore_patterns("static", "__pycache__"))
                else:
                    shutil.copy(path, into)


def install_as_told(base: Path) -> None:
    """The recipe's `pip install`; what it depends on is taken from this Python, to be quick."""
    (told,) = INSTALL
    words = told.replace('"', "").replace("/installed", str(base / "installed")).split()[2:]
    pip = [sys.executable, "-m", "pip", "install", "--no-deps", "--quiet", "--ignore-installed"]
    if subprocess.run(
        [sys.executable, "-m", "pip", "--version"], capture_output=True, check=False
    ).returncode:
        outer = str(Path(sys.executable).resolve())
        pip = [outer, "-m", "pip", "--python", sys.executable, *pip[3:]]
    ran = subprocess.run([*pip, *words], cwd=base / "source", capture_output=True, text=True, check=False)
    assert ran.returncode == 0, ran.stdout + ran.stderr


def another_user() -> dict[str, Any]:
    """As in the container, not root, if this Python is open to others."""
    if os.getuid() != 0:
        return {}
    nobody = pwd.getpwnam("nobody")
    rights: dict[str, Any] = {"user": nobody.pw_uid, "group": nobody.pw_gid, "extra_groups": []}
    try:
        subprocess.run([sys.executable, "-c", ""], check=True, capture_output=True, **rights)
    except (OSError, subprocess.CalledProcessError):
        return {}
    return rights


def test_the_command_of_the_image_serves_and_its_health_is_seen(image: Image) -> None:
    data = Path(tempfile.mkdtemp(prefix="quizroom-image-data-"))
    if image.rights:
        shutil.chown(data, image.rights["user"], image.rights["group"])
    port = free_port()
    environment = image.environment(data, port)
    (command,) = re.findall(r'^CMD \["(.+)"\]$', RECIPE, re.MULTILINE)
    words = command.split('", "')
    program = [sys.executable, str(image.installed / "bin" / words[0]), *words[1:]]
    process = subprocess.Popen(program, cwd=data, env=environment, **image.rights)
    try:
        wait_until(lambda: is_healthy(environment, port), "the command of the image")
    finally:
        process.terminate()
        assert process.wait(timeout=10) == 0
    shutil.rmtree(data)


def is_healthy(environment: dict[str, str], port: int) -> bool:
    """What the engine would ask."""
    kind, _python, *words = SERVER["healthcheck"]["test"]
    assert kind == "CMD"
    asked = [word.replace("127.0.0.1:8000", f"127.0.0.1:{port}") for word in words]
    ran = subprocess.run([sys.executable, *asked], env=environment, capture_output=True, check=False)
    return ran.returncode == 0


def test_the_image_holds_its_pages_and_its_content(image: Image) -> None:
    (package,) = image.installed.glob("lib/python*/site-packages/quizroom")
    assert (package / "static" / ".vite" / "manifest.json").exists()
    assert len(list((package / "content" / "muscles").rglob("*.toml"))) > 200
