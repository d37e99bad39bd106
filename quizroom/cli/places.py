"""What several commands need to find: settings, content, addresses."""

import os
import socket
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import click

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.load import content_folder, load_content
from quizroom.service.ports import NotStored
from quizroom.settings import BadSettings, Settings, read_settings

EVERYWHERE = ("0.0.0.0", "::", "")  # noqa: S104 - compared with, not listened on


def settings_of(given: Mapping[str, Any], *, make_data_folder: bool = False) -> Settings:
    """Settings from the environment and the options, or a clear end."""
    try:
        settings = read_settings(os.environ, given)
    except BadSettings as faults:
        raise click.ClickException(f"These settings cannot be used: {faults}") from faults
    if make_data_folder:
        try:
            settings.data.mkdir(parents=True, exist_ok=True, mode=0o700)
        except OSError as error:
            raise click.ClickException(
                f"The data folder {settings.data} cannot be made: {error.strerror}. Give another with --data"
            ) from error
    return settings


@contextmanager
def clear_ends(settings: Settings) -> Iterator[None]:
    """Let a store that cannot be used end the command in a sentence that says what to do."""
    try:
        yield
    except NotStored as reason:
        why = reason.first_line
        raise click.ClickException(_unusable(settings, why)) from reason


def _unusable(settings: Settings, why: str) -> str:
    if settings.is_shared:
        return f"The database cannot be used: {why}. Is it running, and is QUIZROOM_DATABASE_URL right?"
    return f"The data folder {settings.data} cannot be used: {why}. Give another with --data"


def catalogue_of(folder: Path | None) -> Catalogue:
    """The knowledge base, or a clear end."""
    loaded = load_content(folder or content_folder())
    if loaded.catalogue is None:
        lines = "\n".join(f"  {finding.file}: {finding.message}" for finding in loaded.findings[:5])
        raise click.ClickException(
            f"The content cannot be used:\n{lines}\nAll mistakes: python3 -m quizroom content check"
        )
    return loaded.catalogue


def own_address(settings: Settings, port: int) -> str:
    """Where this machine itself finds the server."""
    host = "127.0.0.1" if settings.host in EVERYWHERE else settings.host
    return f"http://{host}:{port}"


def players_address(settings: Settings, port: int) -> str:
    """Where phones find the server."""
    if settings.address:
        return settings.address.rstrip("/")
    host = _address_in_the_room() if settings.host in EVERYWHERE else settings.host
    return f"http://{host}:{port}"


def _address_in_the_room() -> str:
    """This machine's address on its network; asking the routing table sends no packet."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as probe:
        try:
            probe.connect(("192.0.2.1", 9))  # an address for documentation, RFC 5737
            return str(probe.getsockname()[0])
        except OSError:
            return "127.0.0.1"
