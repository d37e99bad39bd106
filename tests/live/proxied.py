"""The proxy of `docker-compose.yml` as a process: its very configuration, but for ports and certificate."""

import re
import shutil
import subprocess
import tempfile
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from ruamel.yaml import YAML

from tests.house.checkout import text
from tests.services import free_port, listens, wait_until

COMPOSE: dict[str, Any] = YAML(typ="safe").load(text("docker-compose.yml"))
OF_IMAGE = "/tmp/"  # noqa: S108 - in the container; a test puts its own folder in its place


def nginx() -> str | None:
    """Where nginx is, if it is here; Debian keeps it off a user's path."""
    return shutil.which("nginx") or shutil.which("nginx", path="/usr/sbin:/usr/local/sbin")


def certificate(folder: Path) -> Path:
    """A certificate for 127.0.0.1, good for a day, and its key beside it."""
    made = folder / "fullchain.pem"
    names = ["-subj", "/CN=quizroom", "-addext", "subjectAltName=IP:127.0.0.1"]
    key = [
        "-newkey",
        "ec",
        "-pkeyopt",
        "ec_paramgen_curve:prime256v1",
        "-keyout",
        str(folder / "privkey.pem"),
    ]
    command = ["openssl", "req", "-x509", "-nodes", "-days", "1", "-out", str(made), *names, *key]
    subprocess.run(command, check=True, capture_output=True)
    return made


def site(workers: Sequence[int], port: int, folder: Path) -> str:
    """The configuration as the proxy's container gets it, for these ports of workers."""
    written: str = COMPOSE["configs"]["proxy"]["content"].replace("$$", "$").replace(OF_IMAGE, f"{folder}/")
    for number, worker in enumerate(workers, start=1):
        written = written.replace(f"worker-{number}:8000", f"127.0.0.1:{worker}")
    written = written.replace("listen 8443", f"listen 127.0.0.1:{port}")
    return written.replace("/certificates/", f"{folder}/")


def as_it_is(configuration: str) -> str:
    """Change nothing."""
    return configuration


@contextmanager
def proxy(
    program: str, workers: Sequence[int], change: Callable[[str], str] = as_it_is
) -> Iterator[tuple[str, Path]]:
    """Run it before these ports; its address and the certificate to trust."""
    with tempfile.TemporaryDirectory(prefix="quizroom-proxy-") as made:
        folder, port = Path(made), free_port()
        folder.chmod(0o755)
        trusted = certificate(folder)
        config = folder / "nginx.conf"
        config.write_text(change(site(workers, port, folder)), encoding="utf-8")
        # the last word is from the command of the image
        command = [program, "-e", str(folder / "error.log"), "-c", str(config), "-g", "daemon off;"]
        subprocess.run([*command, "-t", "-q"], check=True)
        process = subprocess.Popen(command)
        try:
            wait_until(lambda: listens(port), "the proxy")
            yield f"https://127.0.0.1:{port}", trusted
        finally:
            process.terminate()
            process.wait(timeout=10)


def left_over(configuration: str) -> list[str]:
    """Names of the composed network that a test has forgotten to replace."""
    return re.findall(r"worker-\d+:\d+|/certificates/", configuration)
