"""All that is looked at, in the order in which it is to be mended."""

from collections.abc import Iterator, Mapping

from quizroom.doctor.address import (
    address_findings,
    can_be_opened,
    is_in_container,
    way_findings,
)
from quizroom.doctor.finding import Finding
from quizroom.doctor.folder import folder_findings
from quizroom.doctor.machine import machine_findings
from quizroom.doctor.server import server_findings
from quizroom.doctor.stores import store_findings
from quizroom.settings import Settings


def examine(
    settings: Settings, environment: Mapping[str, str], *, here: str, players: str
) -> Iterator[Finding]:
    """Look at everything; nothing is changed.

    Args:
        settings: as the server has them.
        environment: in which misspelt settings are looked for.
        here: where this machine finds the server.
        players: where players are told to find it.
    """
    yield from machine_findings(settings, environment)
    yield from folder_findings(settings.data, holds_database=not settings.is_shared)
    yield from store_findings(settings)
    yield from address_findings(settings, players, in_container=is_in_container())
    running = tuple(server_findings(here))
    yield from running
    if can_be_opened(players) and any(finding.kind == "well" for finding in running):
        yield from way_findings(settings, players, here)
