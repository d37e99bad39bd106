"""Secrets are kept as hashes alone."""

from hashlib import sha256


def hash_of_secret(secret: str) -> str:
    """SHA-256 in hex: of 80 random bits or more none can be found again by trying, so no salt is needed."""
    return sha256(secret.encode()).hexdigest()
