"""Hashes of passwords by Argon2id (RFC 9106)."""

from collections.abc import Callable
from typing import Any

TIME_COST, MEMORY_KIB, LANES = 3, 64 * 1024, 4
"""RFC 9106, section 4, the second recommended option, for machines with little memory: t=3, p=4, 64 MiB."""
SALT_BYTES, TAG_BYTES = 16, 32
"""As the same option has them: 128 and 256 bits."""


def _here(work: Callable[..., Any], *given: Any) -> Any:
    return work(*given)


class Argon2Passwords:
    """`service.passwords.Passwords`. The library is loaded when the first password comes."""

    def __init__(self, run_apart: Callable[..., Any] = _here) -> None:
        """Let `run_apart(work, *given)` do the slow part where it keeps nobody waiting."""
        self._run_apart = run_apart

    def hashed(self, password: str) -> str:
        """A hash with its salt and parameters, as text."""
        return str(self._run_apart(_hasher().hash, password))

    def fits(self, password_hash: str, password: str) -> bool:
        """Whether the hash was made of this password; a spoilt hash fits nothing."""
        from argon2.exceptions import InvalidHashError, VerificationError  # noqa: PLC0415 - as below

        try:
            return bool(self._run_apart(_hasher().verify, password_hash, password))
        except (VerificationError, InvalidHashError):
            return False

    def is_outdated(self, password_hash: str) -> bool:
        """Whether other parameters made it."""
        return bool(_hasher().check_needs_rehash(password_hash))


def _hasher() -> Any:
    from argon2 import PasswordHasher, Type  # noqa: PLC0415 - a start need not pay for it

    return PasswordHasher(
        time_cost=TIME_COST,
        memory_cost=MEMORY_KIB,
        parallelism=LANES,
        hash_len=TAG_BYTES,
        salt_len=SALT_BYTES,
        type=Type.ID,
    )
