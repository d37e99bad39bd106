"""How often something may be tried: so many times at once, and then again with time.

Counted by what is tried (an account, all door codes together), never by address: a whole class shares one.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import Protocol

MOST_COUNTED = 4000
"""More need not be kept apart: what has all its tries again is forgotten."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Limit:
    """`most` tries at once, which come back at so many `a_second`; what bears the same `name` shares them."""

    name: str
    most: float
    a_second: float


class Tries(Protocol):
    """Counts tries; `now` is in seconds since the epoch."""

    def take(self, limits: Sequence[Limit], now: float) -> bool:
        """Take a try of each limit, if each has one left; else none is taken."""

    def are_left(self, limit: Limit, now: float) -> bool:
        """Whether there is a try left."""

    def give_back(self, limit: Limit, now: float) -> None:
        """One that was taken does not count."""

    def forgive(self, limit: Limit, now: float) -> None:
        """All that were taken do not count."""


@dataclass(slots=True)
class _Left:
    limit: Limit
    left: float
    at: float

    def refill(self, now: float) -> float:
        gone = max(0.0, now - self.at)
        self.left = min(self.limit.most, self.left + gone * self.limit.a_second)
        self.at = max(self.at, now)
        return self.left


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnTries:
    """`Tries` counted by this process for itself, and forgotten when it ends."""

    counted: dict[str, _Left] = field(default_factory=dict)

    def take(self, limits: Sequence[Limit], now: float) -> bool:
        """Take a try of each limit, or none."""
        found = [self._left(limit, now) for limit in limits]
        if any(each.refill(now) < 1.0 for each in found):
            return False
        for each in found:
            each.left -= 1.0
            self.counted[each.limit.name] = each
        self._tidy(now)
        return True

    def are_left(self, limit: Limit, now: float) -> bool:
        """Whether there is a try left."""
        return self._left(limit, now).refill(now) >= 1.0

    def give_back(self, limit: Limit, now: float) -> None:
        """One that was taken does not count."""
        found = self._left(limit, now)
        found.left = min(limit.most, found.refill(now) + 1.0)

    def forgive(self, limit: Limit, now: float) -> None:  # noqa: ARG002 - the contract has it
        """All that were taken do not count."""
        self.counted.pop(limit.name, None)

    def _left(self, limit: Limit, now: float) -> _Left:
        return self.counted.get(limit.name) or _Left(limit, limit.most, now)

    def _tidy(self, now: float) -> None:
        if len(self.counted) > MOST_COUNTED:
            for name, each in list(self.counted.items()):
                if each.refill(now) >= each.limit.most:
                    del self.counted[name]
