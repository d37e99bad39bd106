"""The clock of the machine."""

from datetime import UTC, datetime


class SystemClock:
    """`service.ports.Clock` from the operating system."""

    def now(self) -> datetime:
        """The current time in UTC."""
        return datetime.now(UTC)
