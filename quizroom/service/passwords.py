"""Passwords of hosts: what makes one good, and how often one may be guessed.

Tries are counted for each account and in all, never by address: a whole college shares one.
"""

import unicodedata
from dataclasses import dataclass, field
from typing import Protocol

from quizroom.room.handles import folded
from quizroom.service.hashing import hash_of_secret
from quizroom.service.tries import Limit, OwnTries, Tries

SHORTEST_PASSWORD = 15
"""NIST SP 800-63B-4, 3.1.1.2, for a password that is the only proof (from memory)."""
LONGEST_PASSWORD = 200
FEWEST_DIFFERENT = 5

FOR_ONE = 10.0
"""Wrong passwords of one account at once; then one every five minutes."""
FOR_ONE_A_SECOND = 1 / 300
IN_ALL = Limit(name="passwords", most=100.0, a_second=1.0)
"""Of all accounts together; then one a second, which also bounds the work of checking them."""

TOO_SHORT = f"A password needs at least {SHORTEST_PASSWORD} characters; four or five words do."
TOO_LONG = f"A password has at most {LONGEST_PASSWORD} characters."
TOO_PLAIN = "This password is easily guessed: take more different characters, and more than your name."


class Passwords(Protocol):
    """Makes and checks hashes of passwords; slow on purpose."""

    def hashed(self, password: str) -> str:
        """What may be kept of a password."""

    def fits(self, password_hash: str, password: str) -> bool:
        """Whether the hash was made of this password."""

    def is_outdated(self, password_hash: str) -> bool:
        """Whether the hash was made with other parameters than today's."""


def tidy_password(raw: str) -> str:
    """The form that is hashed: NFC, so that the same letters count the same on every keyboard."""
    return unicodedata.normalize("NFC", raw)


def fault_of_password(password: str, name: str) -> str:
    """What is wrong with a new password, in a sentence; empty if it will do."""
    if len(password) < SHORTEST_PASSWORD:
        return TOO_SHORT
    if len(password) > LONGEST_PASSWORD:
        return TOO_LONG
    rest = folded(password).replace(folded(name), "") if name else folded(password)
    return TOO_PLAIN if len(set(rest)) < FEWEST_DIFFERENT else ""


@dataclass(frozen=True, slots=True, kw_only=True)
class PasswordTries:
    """What is left to guess, by account and in all; times are seconds since the epoch."""

    tries: Tries = field(default_factory=OwnTries)

    def take(self, account: str, now: float) -> bool:
        """Take a try for this account if there is one; it is given back if the password was right."""
        return self.tries.take((_limit_of(account), IN_ALL), now)

    def give_back(self, account: str, now: float) -> None:
        """The password was right: the account has all its tries again."""
        self.tries.forgive(_limit_of(account), now)
        self.tries.give_back(IN_ALL, now)


def _limit_of(account: str) -> Limit:
    # By its hash: nobody need read names of hosts where tries are counted.
    return Limit(name=f"password.{hash_of_secret(account)}", most=FOR_ONE, a_second=FOR_ONE_A_SECOND)
