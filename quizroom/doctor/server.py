"""The running server, asked on this machine itself."""

from collections.abc import Iterator
from typing import Any

import requests

from quizroom.doctor.finding import Finding, fault, remark, well

ABOUT = "Server"
WAIT_S = 5.0
ALIVE = {"status": "ok"}


def server_findings(here: str) -> Iterator[Finding]:
    """What the server at `here` says of itself."""
    try:
        told = _told(here)
    except requests.RequestException:
        yield remark(
            ABOUT,
            f"No server answers at {here}, so how it is reached was not tried.",
            "Start it (quizroom serve) and examine again; --port names another port.",
        )
        return
    if told is None:
        yield fault(
            ABOUT,
            f"Something else than quizroom answers at {here}.",
            "End it, or give quizroom another port with QUIZROOM_PORT or --port.",
        )
        return
    for said in told["faults"]:
        yield fault(ABOUT, said, "See what is found of the database above, and the server's log.")
    for said in told["remarks"]:
        yield remark(ABOUT, said, "See that QUIZROOM_FANOUT_URL is set for it and right.")
    if not told["faults"]:
        yield well(ABOUT, f"It is ready at {here}.")


def _told(here: str) -> dict[str, Any] | None:
    """What it says about being ready; None if it is no quizroom."""
    try:
        if requests.get(f"{here}/healthz", timeout=WAIT_S).json() != ALIVE:
            return None
        told = requests.get(f"{here}/readyz", timeout=WAIT_S).json()
    except requests.JSONDecodeError:
        return None
    return told if isinstance(told, dict) and told.keys() >= {"faults", "remarks"} else None
