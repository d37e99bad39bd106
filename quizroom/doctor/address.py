"""The address that players use: how it is written, where it leads, what the proxy on the way lets through."""

import ipaddress
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

import requests

from quizroom.doctor.finding import Finding, fault, remark, well
from quizroom.doctor.lines import line_findings
from quizroom.doctor.server import ALIVE, WAIT_S
from quizroom.settings import Settings

ABOUT = "Address"
CONTAINER_MARKS = (Path("/.dockerenv"), Path("/run/.containerenv"))
FROM_HERE = "Some networks do not lead a machine to itself: then look from a phone."


def address_findings(settings: Settings, players: str, *, in_container: bool) -> Iterator[Finding]:
    """What can be said of an address without going there; `players` is the one that players are told."""
    parts = urlsplit(players)
    if not can_be_opened(players) or not parts.hostname:
        yield fault(
            ABOUT,
            f"QUIZROOM_ADDRESS is {players}, which is no address that a phone can open.",
            "Write it like https://review.example: scheme and name, with the port if it is a special one.",
        )
    elif _is_this_machine(parts.hostname):
        yield fault(
            ABOUT,
            f"Players are told {players}, which leads each phone to itself.",
            "Join a network, or set QUIZROOM_ADDRESS to the address that phones reach this machine at.",
        )
    elif in_container and not settings.address:
        yield fault(
            ABOUT,
            f"Players are told {players}, which is the container's own.",
            "Set QUIZROOM_ADDRESS to the address that phones reach this machine at.",
        )
    elif parts.scheme == "http" and _is_public(parts.hostname):
        yield remark(
            ABOUT,
            f"{players} is not protected on its way: others may read answers and keys.",
            "Put a proxy with a certificate before it, and set QUIZROOM_ADDRESS to https://...",
        )
    else:
        yield well(ABOUT, f"Players are told {players}.")


def can_be_opened(players: str) -> bool:
    """Whether a phone could make anything of it."""
    parts = urlsplit(players)
    plain = not parts.path.strip("/") and not parts.query
    return parts.scheme in ("http", "https") and bool(parts.hostname) and plain


def way_findings(settings: Settings, players: str, here: str) -> Iterator[Finding]:
    """What comes of going there, while a server runs at `here`."""
    try:
        answer = requests.get(f"{players}/healthz", timeout=WAIT_S, allow_redirects=False)
    except requests.exceptions.SSLError as error:
        yield fault(
            ABOUT,
            f"The certificate of {players} is not trusted: {_cause(error)}.",
            "Renew it; it must name this host, and the file must hold the whole chain (fullchain.pem).",
        )
        return
    except requests.RequestException as error:
        yield fault(
            ABOUT,
            f"Nothing answers at {players}: {_cause(error)}.",
            f"Lead the name to this machine, and let firewall and proxy pass its port. {FROM_HERE}",
        )
        return
    refusal = _refusal(answer, players, here)
    if refusal is not None:
        yield refusal
        return
    yield well(ABOUT, f"{players} leads to a quizroom.")
    if players != here and requests.get(f"{players}/metrics", timeout=WAIT_S).status_code == 200:
        yield remark(
            "Metrics",
            "Everybody may read /metrics.",
            "Let the proxy keep that address to itself, or unset QUIZROOM_METRICS.",
        )
    yield from line_findings(players, polling=settings.transports == "any")


def is_in_container() -> bool:
    """Whether this process runs in a container of one of the usual kinds."""
    return any(mark.exists() for mark in CONTAINER_MARKS)


def _refusal(answer: requests.Response, players: str, here: str) -> Finding | None:
    if answer.is_redirect:
        there = answer.headers["Location"].removesuffix("/healthz")
        return fault(ABOUT, f"{players} leads on to {there}.", f"Set QUIZROOM_ADDRESS={there}")
    if answer.status_code in (502, 503, 504):
        return fault(
            ABOUT,
            f"A proxy answers at {players}, but finds no server behind it ({answer.status_code}).",
            f"Let it pass to {here}, or to where the workers listen.",
        )
    try:
        known = answer.json() == ALIVE
    except requests.JSONDecodeError:
        known = False
    if known:
        return None
    return fault(
        ABOUT,
        f"What answers at {players} is no quizroom ({answer.status_code}).",
        f"Let that address lead to {here}, with the whole path.",
    )


def _is_this_machine(host: str) -> bool:
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return host == "localhost"


def _is_public(host: str) -> bool:
    try:
        return ipaddress.ip_address(host).is_global
    except ValueError:
        return "." in host and not host.endswith((".local", ".lan", ".internal", ".home.arpa"))


def _cause(error: BaseException) -> str:
    """The innermost reason, which is the one that says something."""
    inner = error.args[0] if error.args else None
    inner = getattr(inner, "reason", inner)
    return _cause(inner) if isinstance(inner, BaseException) else str(error).rpartition(">: ")[2]
