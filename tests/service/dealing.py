"""Reviews whose random numbers are chosen."""

from quizroom.service.reviews import (
    Reviews,
)
from tests.service.courses import knowledge
from tests.service.fakes import Desk


def reviews(desk: Desk, *seeds: int) -> Reviews:
    """Reviews whose random numbers are these, and then the last for ever."""
    left = list(seeds or (12345,))
    return Reviews(
        catalogue=knowledge(),
        rooms=desk.rooms,
        log=desk.log,
        new_seed=lambda: left.pop(0) if len(left) > 1 else left[0],
    )
