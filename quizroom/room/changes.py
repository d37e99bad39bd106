"""Who changed what answers are worth, and when: kept with the room, so that it stays visible."""

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

ChangeKind = Literal[
    "struck",
    "restored",
    "rekeyed",
    "key_restored",
    "words_accepted",
    "words_refused",
    "seated",
    "drawn",
    "bench_renamed",
    "sent_out",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class Change:
    """One decision of a host. `by` and `at` are "" and None in logs from before they were noted.

    `what` is the key in words, the words ruled on, or the bench; `round` is 0 where it concerns the whole
    review. Nobody's handle is in it, so that it may stay when a player is forgotten.
    """

    round: int
    kind: ChangeKind
    what: str = ""
    reason: str = ""
    by: str
    at: datetime | None
