"""How a host gets in: a one-time key is exchanged for a cookie. Only hashes of both are stored."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime, timedelta
from http.cookies import CookieError, SimpleCookie

from quizroom.service.hashing import hash_of_secret
from quizroom.service.ports import Accounts, Clock

COOKIE = "quizroom_host"
OWNER = "owner"
"""The host of a server with a single host."""
KEY_LIVES = timedelta(hours=12)


@dataclass(frozen=True, slots=True, kw_only=True)
class HostEntry:
    """Makes, spends and recognises the keys of hosts; `new_secret` gives at least 128 random bits."""

    accounts: Accounts
    clock: Clock
    new_secret: Callable[[], str]

    def new_key(self) -> str:
        """A one-time key for the desk, good for twelve hours."""
        key = self.new_secret()
        self.accounts.add_entry_key(hash_of_secret(key), _in_time(self.clock.now()))
        return key

    def spend(self, key: str) -> str | None:
        """Exchange a key for the token of a host's browser; None if the key is not good."""
        if not self.accounts.spend_entry_key(hash_of_secret(key), self.clock.now()):
            return None
        token = self.new_secret()
        self.accounts.add_host_token(hash_of_secret(token), OWNER, self.clock.now())
        return token

    def leave(self, token: str) -> None:
        """Let the token of a browser open the desk no more."""
        self.accounts.drop_host_token(hash_of_secret(token))

    def host_of_token(self, token: str) -> str:
        """The host of a token; empty if there is none."""
        return (self.accounts.host_of_token(hash_of_secret(token)) or "") if token else ""

    def host_of_cookie_header(self, header: str) -> str:
        """The host that a raw Cookie header proves; empty if it proves none."""
        try:
            cookie = SimpleCookie(header)
        except CookieError:
            return ""
        return self.host_of_token(cookie[COOKIE].value if COOKIE in cookie else "")


def form_proof(token: str) -> str:
    """What a form must hold so that it was made for this browser: another site cannot know it."""
    return hash_of_secret(f"form {token}")


def _in_time(now: datetime) -> datetime:
    return now + KEY_LIVES
