"""Orders about a review as a thing: whose it is."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class HandOverReview:
    """Let the review belong to another host."""

    host: str


HostCommand = HandOverReview
