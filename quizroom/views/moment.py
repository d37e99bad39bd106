"""Times as the wire has them."""

from datetime import datetime


def milliseconds(moment: datetime) -> int:
    """Milliseconds since 1970-01-01 UTC."""
    return round(moment.timestamp() * 1000)
