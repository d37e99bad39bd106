"""The end of a server."""

from dataclasses import dataclass

LEAVING_S = 0.5
"""How long a server that is told to end lets its last words go out."""


@dataclass(slots=True)
class Leaving:
    """Whether somebody told the server to end (SIGTERM)."""

    asked: bool = False


def faults_of(leaving: Leaving, store_fault: str) -> tuple[str, ...]:
    """What keeps a server from serving, in sentences; none if all is well."""
    about_to_end = "This server is about to end." if leaving.asked else ""
    return tuple(fault for fault in (about_to_end, store_fault) if fault)
