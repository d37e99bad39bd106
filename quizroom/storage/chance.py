"""Ids, secrets and seeds from the machine's source of randomness."""

import secrets


def new_secret() -> str:
    """256 random bits as text for a link or a cookie."""
    return secrets.token_urlsafe(32)


def new_id() -> str:
    """64 random bits as an id; not a secret, but not to be guessed either."""
    return secrets.token_hex(8)


def new_seed() -> int:
    """A random number below 2**31, for dealing or a door code."""
    return secrets.randbits(31)
