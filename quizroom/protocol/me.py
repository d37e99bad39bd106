"""What is kept of a player, for the player: JSON at /mine/api/me."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Me:
    """Whether anything is kept under this key, since when, and how long it stays.

    Times are ms since 1970 (UTC). Days of 0 mean: until it is deleted.
    """

    known: bool
    since: int | None
    seen_at: int | None
    reviews: int
    keep_reviews_days: int
    keep_players_days: int
