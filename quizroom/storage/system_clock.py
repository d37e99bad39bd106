"""The clock of the machine."""

from datetime import UTC, datetime, timedelta


class SystemClock:
    """`service.ports.Clock` from the operating system, ahead of it by so many days."""

    def __init__(self, *, days_ahead: int = 0) -> None:
        """Days ahead are for trying out what will come back when."""
        self._ahead = timedelta(days=days_ahead)

    def now(self) -> datetime:
        """The current time in UTC."""
        return datetime.now(UTC) + self._ahead
