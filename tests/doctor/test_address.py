"""What is found of the address that players use, by small web servers that answer as bad proxies do."""

import ssl
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest

from quizroom.doctor.address import address_findings, way_findings
from quizroom.doctor.finding import Finding
from quizroom.doctor.server import server_findings
from quizroom.settings import Settings
from tests.live.proxied import certificate
from tests.services import free_port

Answers = dict[str, tuple[int, str]]
"""Status and body by path; with a status of 3xx the body is where it leads."""


@contextmanager
def answering(
    answers: Answers, wrap: Callable[[ThreadingHTTPServer], None] = lambda _: None
) -> Iterator[str]:
    class Handler(BaseHTTPRequestHandler):
        def do_GET(self) -> None:
            status, body = answers.get(self.path, (404, ""))
            self.send_response(status)
            if 300 <= status < 400:
                self.send_header("Location", body)
            self.send_header("Content-Length", str(len(body)))
            self.end_headers()
            self.wfile.write(body.encode())

        def log_message(self, *_: object) -> None:
            """Say nothing."""

    with ThreadingHTTPServer(("127.0.0.1", 0), Handler) as server:
        wrap(server)
        scheme = "https" if isinstance(server.socket, ssl.SSLSocket) else "http"
        thread = threading.Thread(target=server.serve_forever)
        thread.start()
        try:
            yield f"{scheme}://127.0.0.1:{server.server_address[1]}"
        finally:
            server.shutdown()
            thread.join()


def way(players: str) -> list[Finding]:
    return list(way_findings(Settings(transports="websocket"), players, "http://127.0.0.1:1"))


@pytest.mark.parametrize(
    "players,in_container,kind,word",
    [
        ("https://review.example", True, "well", "Players are told"),
        ("http://192.168.1.5:8000", False, "well", "Players are told"),
        ("http://hamate-hill.local", False, "well", "Players are told"),
        ("http://192.168.1.5:8000", True, "fault", "container's own"),
        ("review.example", False, "fault", "no address"),
        ("https://review.example/room", False, "fault", "no address"),
        ("http://127.0.0.1:8000", False, "fault", "itself"),
        ("http://localhost:8000", False, "fault", "itself"),
        ("http://review.example", False, "remark", "not protected"),
    ],
)
def test_how_an_address_is_written(players: str, in_container: bool, kind: str, word: str) -> None:  # noqa: FBT001 - a case of a table
    settings = Settings(address=players if players.startswith("https") else "")
    (found,) = address_findings(settings, players, in_container=in_container)
    assert found.kind == kind
    assert word in found.said
    assert bool(found.remedy) == (kind != "well")


@pytest.mark.parametrize(
    "answers,said,remedy",
    [
        (
            {"/healthz": (301, "https://review.example/healthz")},
            "leads on to",
            "QUIZROOM_ADDRESS=https://review.example",
        ),
        ({"/healthz": (502, "")}, "finds no server", "Let it pass to http://127.0.0.1:1"),
        ({"/healthz": (200, "<html>Welcome</html>")}, "is no quizroom (200)", "with the whole path"),
        ({}, "is no quizroom (404)", "with the whole path"),
    ],
)
def test_a_proxy_that_leads_elsewhere_is_a_fault(answers: Answers, said: str, remedy: str) -> None:
    with answering(answers) as players:
        (found,) = way(players)
    assert found.kind == "fault"
    assert said in found.said
    assert remedy in found.remedy


def test_a_proxy_without_websockets_and_with_open_metrics_is_said() -> None:
    with answering({"/healthz": (200, '{"status": "ok"}'), "/metrics": (200, "")}) as players:
        well, metrics, lines = way(players)
    assert [well.kind, metrics.kind, lines.kind] == ["well", "remark", "fault"]
    assert "/metrics" in metrics.said
    assert "No websocket gets through" in lines.said
    assert "404" in lines.said
    assert "Upgrade" in lines.remedy


def test_nobody_there_is_a_fault() -> None:
    (found,) = way(f"http://127.0.0.1:{free_port()}")
    assert "Connection refused" in found.said
    (unknown,) = way("http://review.invalid")
    assert unknown.kind == "fault"
    assert "firewall" in unknown.remedy


def test_a_certificate_that_nobody_trusts_is_a_fault(tmp_path: Path) -> None:
    certificate(tmp_path)
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.load_cert_chain(tmp_path / "fullchain.pem", tmp_path / "privkey.pem")

    def wrap(server: ThreadingHTTPServer) -> None:
        server.socket = context.wrap_socket(server.socket, server_side=True)

    with answering({}, wrap) as players:
        (found,) = way(players)
    assert "The certificate of https://" in found.said
    assert "self-signed certificate" in found.said
    assert "fullchain.pem" in found.remedy


def test_another_program_at_the_port_is_a_fault_and_nobody_a_remark() -> None:
    with answering({"/healthz": (200, "<html>")}) as here:
        (other,) = server_findings(here)
    assert "Something else than quizroom" in other.said
    (nobody,) = server_findings(f"http://127.0.0.1:{free_port()}")
    assert nobody.kind == "remark"
    assert "quizroom serve" in nobody.remedy


def test_what_a_server_says_of_itself_is_passed_on() -> None:
    told = (
        '{"status": "not ready", "faults": ["The database does not answer."], "remarks": ["Redis is away."]}'
    )
    with answering({"/healthz": (200, '{"status":"ok"}'), "/readyz": (503, told)}) as here:
        found = list(server_findings(here))
    assert [(one.kind, one.said) for one in found] == [
        ("fault", "The database does not answer."),
        ("remark", "Redis is away."),
    ]
