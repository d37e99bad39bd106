"""Passwords of hosts: what makes one good, and how often one may be guessed.

Tries are counted for each account and in all, never by address: a whole college shares one. Each worker
counts for itself, and forgets when it ends.
"""

import unicodedata
from dataclasses import dataclass, field
from typing import Protocol

from quizroom.room.handles import folded

SHORTEST_PASSWORD = 15
"""NIST SP 800-63B-4, 3.1.1.2, for a password that is the only proof (from memory)."""
LONGEST_PASSWORD = 200
FEWEST_DIFFERENT = 5

FOR_ONE = 10.0
"""Wrong passwords of one account at once; then one every five minutes."""
FOR_ONE_A_SECOND = 1 / 300
IN_ALL = 100.0
"""Of all accounts together; then one a second, which also bounds the work of checking them."""
IN_ALL_A_SECOND = 1.0
MOST_ACCOUNTS_COUNTED = 4000
"""More cannot be short of tries at once: one a second comes, and after 50 minutes one has all again."""

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


@dataclass(slots=True)
class _Tries:
    left: float
    at: float

    def refill(self, now: float, *, most: float, a_second: float) -> float:
        gone = max(0.0, now - self.at)
        self.left, self.at = min(most, self.left + gone * a_second), now
        return self.left


@dataclass(slots=True)
class PasswordTries:
    """What is left to guess, by account and in all; times are seconds of any steady clock."""

    accounts: dict[str, _Tries] = field(default_factory=dict)
    together: _Tries = field(default_factory=lambda: _Tries(IN_ALL, 0.0))

    def take(self, account: str, now: float) -> bool:
        """Take a try for this account if there is one; it is given back if the password was right."""
        one = self.accounts.get(account) or _Tries(FOR_ONE, now)
        left = one.refill(now, most=FOR_ONE, a_second=FOR_ONE_A_SECOND)
        in_all = self.together.refill(now, most=IN_ALL, a_second=IN_ALL_A_SECOND)
        if min(left, in_all) < 1.0:
            return False
        one.left -= 1.0
        self.together.left -= 1.0
        self.accounts[account] = one
        self._tidy(now)
        return True

    def give_back(self, account: str) -> None:
        """The password was right: the account has all its tries again."""
        self.accounts.pop(account, None)
        self.together.left = min(IN_ALL, self.together.left + 1.0)

    def _tidy(self, now: float) -> None:
        if len(self.accounts) <= MOST_ACCOUNTS_COUNTED:
            return
        for account, tries in list(self.accounts.items()):
            if tries.refill(now, most=FOR_ONE, a_second=FOR_ONE_A_SECOND) >= FOR_ONE:
                del self.accounts[account]
