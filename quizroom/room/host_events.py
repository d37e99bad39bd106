"""Facts about a review as a thing: whose it is."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewHandedOver:
    """From now on the review belongs to this host."""

    host: str
    at: datetime


HostEvent = ReviewHandedOver
