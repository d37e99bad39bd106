"""The room: what may be ordered, what has happened, and what follows from it."""
