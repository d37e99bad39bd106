"""What a player is told about more time that they may take by themselves."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class TimeToTake:
    """How a player stands with it, in the current round of their own view."""

    always: bool
    """Whether they take it in every round."""
    taken: int
    """How often they have taken it for what is asked now."""
    most: int
    """How often it may be taken in a round."""
    until: int | None
    """Until when it may be taken, ms since 1970; None if no clock runs."""
