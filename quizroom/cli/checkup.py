"""What may be wrong with a deployment, each as a finding with its remedy. Nothing here changes anything."""

import os
import shutil
import sys
import tempfile
import time
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from email.utils import parsedate_to_datetime
from pathlib import Path
from typing import Literal
from urllib.error import URLError
from urllib.parse import urlsplit
from urllib.request import urlopen

import websocket

from quizroom.knowledge.load import content_folder, load_content
from quizroom.pages.bundle import NotBuilt, read_manifest
from quizroom.service.ports import NotStored
from quizroom.settings import Settings
from quizroom.storage.database import database_fault, open_database

State = Literal["well", "mind", "wrong"]

LITTLE_SPACE = 1_000_000_000
"""Bytes; a term of reviews needs far less, but a full disk stops a review."""
FILES_A_PLAYER = 2
FILES_BESIDE = 200
WAIT_S = 5.0
MOST_SKEW_S = 60.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing looked at: "well", "mind" (works, but) or "wrong"; `remedy` says what to do about it."""

    state: State
    what: str
    remedy: str = ""


Check = Callable[[Settings], Iterator[Finding]]


def python_is_new_enough(_settings: Settings) -> Iterator[Finding]:
    """Python 3.11 or newer."""
    version = ".".join(map(str, sys.version_info[:3]))
    if sys.version_info < (3, 11):  # noqa: UP036 - that is what is looked at
        yield Finding(state="wrong", what=f"Python {version}", remedy="Install Python 3.11 or newer.")
    else:
        yield Finding(state="well", what=f"Python {version}")


def pages_are_built(_settings: Settings) -> Iterator[Finding]:
    """The web build is there."""
    try:
        read_manifest()
    except NotBuilt as reason:
        yield Finding(state="wrong", what="The pages are missing", remedy=str(reason))
    else:
        yield Finding(state="well", what="The pages are built")


def content_is_readable(settings: Settings) -> Iterator[Finding]:
    """The knowledge base can be read."""
    loaded = load_content(settings.content or content_folder())
    if loaded.catalogue is None:
        remedy = "See all mistakes with: quizroom content check"
        yield Finding(state="wrong", what="The content cannot be used", remedy=remedy)
    else:
        yield Finding(state="well", what=f"The content holds {len(loaded.catalogue.muscles)} muscles")


def data_folder_is_usable(settings: Settings) -> Iterator[Finding]:
    """The data folder exists, may be written, is private and has room."""
    folder = settings.data
    try:
        folder.mkdir(parents=True, exist_ok=True, mode=0o700)
        with tempfile.NamedTemporaryFile(dir=folder):
            pass
    except OSError as error:
        remedy = "Give another folder with QUIZROOM_DATA, or give the server's user the right to write there."
        yield Finding(state="wrong", what=f"Data folder {folder}: {error.strerror}", remedy=remedy)
        return
    yield Finding(state="well", what=f"Data folder {folder} can be written")
    yield _space(folder)
    if os.name == "posix" and folder.stat().st_mode & 0o077:
        yield Finding(
            state="mind", what="Others may read the data folder", remedy=f"Close it: chmod 700 {folder}"
        )


def _space(folder: Path) -> Finding:
    free = shutil.disk_usage(folder).free
    words = f"{free / 1e9:.1f} GB free for data"
    if free < LITTLE_SPACE:
        return Finding(state="mind", what=words, remedy="Free some space: a full disk stops a review.")
    return Finding(state="well", what=words)


def database_answers(settings: Settings) -> Iterator[Finding]:
    """The database can be opened and answers."""
    kind = urlsplit(settings.database_url).scheme.partition("+")[0]
    try:
        engine = open_database(settings.database_url)
        fault = database_fault(engine)
        engine.dispose()
    except NotStored as reason:
        fault = reason.cause.splitlines()[0]
    if fault:
        remedy = "Is it running, and are its address, name and password right? Then run this again."
        yield Finding(state="wrong", what=f"Database ({kind}): {fault}", remedy=remedy)
    else:
        yield Finding(state="well", what=f"Database ({kind}) answers")


def enough_files_may_be_open(settings: Settings) -> Iterator[Finding]:
    """Each connection is an open file."""
    if os.name != "posix":
        return
    import resource  # noqa: PLC0415 - not on Windows

    _soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    wanted = settings.capacity * FILES_A_PLAYER + FILES_BESIDE
    if hard != resource.RLIM_INFINITY and hard < wanted:
        remedy = f"Raise it to {wanted} or more, such as by LimitNOFILE of systemd or ulimits of Docker."
        yield Finding(state="mind", what=f"At most {hard} files may be open", remedy=remedy)
    else:
        yield Finding(state="well", what="Enough files may be open for a full room")


def address_leads_here(settings: Settings) -> Iterator[Finding]:
    """The address that players use answers, keeps sockets open, and its clock agrees."""
    if not settings.address:
        remedy = "Set QUIZROOM_ADDRESS to what phones reach, if there is a name or a proxy."
        yield Finding(state="mind", what="No address of its own is set", remedy=remedy)
        return
    address = settings.address.rstrip("/")
    if not address.startswith("https://"):
        remedy = "Let a proxy with a certificate stand before it, and set QUIZROOM_ADDRESS to https://..."
        yield Finding(state="mind", what=f"{address} is not encrypted", remedy=remedy)
    try:
        with urlopen(f"{address}/readyz", timeout=WAIT_S) as answer:  # noqa: S310 - the operator's own address
            said = answer.headers.get("Date", "")
    except (URLError, OSError, ValueError) as error:
        remedy = "Is the server running, does the name lead to it, and does the proxy pass it on?"
        yield Finding(state="wrong", what=f"{address}/readyz: {error}", remedy=remedy)
        return
    yield Finding(state="well", what=f"{address} answers and is ready")
    yield _clock(said)
    yield _socket(address)


def _clock(said: str) -> Finding:
    skew = abs(parsedate_to_datetime(said).timestamp() - time.time()) if said else 0.0
    if skew > MOST_SKEW_S:
        remedy = "Let both machines keep time by NTP."
        return Finding(state="mind", what=f"The clocks differ by {skew:.0f} s", remedy=remedy)
    return Finding(state="well", what="The clocks agree")


def _socket(address: str) -> Finding:
    target = f"{address.replace('http', 'ws', 1)}/socket.io/?EIO=4&transport=websocket"
    try:
        websocket.create_connection(target, timeout=WAIT_S).close()
    except (websocket.WebSocketException, OSError) as error:
        words = str(error).splitlines()[0][:80]
        remedy = "Let the proxy pass on Upgrade and Connection; till then pages fall back to long polling."
        return Finding(state="mind", what=f"WebSocket does not come through: {words}", remedy=remedy)
    return Finding(state="well", what="WebSocket comes through")


CHECKS: tuple[Check, ...] = (
    python_is_new_enough,
    pages_are_built,
    content_is_readable,
    data_folder_is_usable,
    database_answers,
    enough_files_may_be_open,
    address_leads_here,
)


def checkup(settings: Settings) -> Iterator[Finding]:
    """Everything there is to find, in order."""
    for check in CHECKS:
        yield from check(settings)
