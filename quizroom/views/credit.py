"""What is told about a review for credit: numbers alone, never a name or an id."""

from dataclasses import dataclass

from quizroom.room.credit import tries_left
from quizroom.room.state import Room


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnClaim:
    """Whether this seat is on the roster, and how often an id may still be tried."""

    claimed: bool
    tries_left: int


@dataclass(frozen=True, slots=True, kw_only=True)
class CreditCount:
    """How many seats are on the roster, and how many are not."""

    claimed: int
    unclaimed: int


def own_claim(room: Room, player: str) -> OwnClaim | None:
    """What a player is told of their own claim; None where nothing is for credit."""
    if not room.plan.roster or player not in room.players:
        return None
    return OwnClaim(claimed=player in room.claims, tries_left=tries_left(room, player))


def credit_count(room: Room) -> CreditCount | None:
    """What the desk is told; None where nothing is for credit."""
    if not room.plan.roster:
        return None
    return CreditCount(claimed=len(room.claims), unclaimed=len(room.players) - len(room.claims))
