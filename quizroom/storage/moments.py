"""Times as they come back from a database."""

from datetime import UTC, datetime


def in_utc(at: datetime) -> datetime:
    """The moment in UTC: SQLite forgets the zone, which is always that; PostgreSQL gives the session's."""
    return at.replace(tzinfo=UTC) if at.tzinfo is None else at.astimezone(UTC)
