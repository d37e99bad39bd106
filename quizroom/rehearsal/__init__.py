"""A rehearsal: a demo review, played by simulated players against a running server."""
