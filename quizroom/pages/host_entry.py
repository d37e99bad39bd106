"""How a host gets in: by a one-time key or a password, for a cookie. Only hashes are stored."""

from collections.abc import Callable
from dataclasses import dataclass
from datetime import timedelta
from http.cookies import CookieError, SimpleCookie

from quizroom.service.hashing import hash_of_secret
from quizroom.service.host_ports import FIRST_OWNER, Host, HostStore
from quizroom.service.ports import Accounts, Clock

COOKIE = "quizroom_host"
KEY_LIVES = timedelta(hours=12)
SESSION_LIVES = timedelta(days=120)
"""A term: after it a browser must prove anew whose it is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class HostEntry:
    """Makes, spends and recognises the keys of hosts; `new_secret` gives at least 128 random bits."""

    accounts: Accounts
    hosts: HostStore
    clock: Clock
    new_secret: Callable[[], str]

    def new_key(self, host: str = FIRST_OWNER) -> str:
        """A one-time key for the desk of a host, good for twelve hours."""
        key = self.new_secret()
        self.accounts.add_entry_key(hash_of_secret(key), host, self.clock.now() + KEY_LIVES)
        return key

    def spend(self, key: str) -> str | None:
        """Exchange a key for the token of a host's browser; None if the key is not good."""
        host = self.accounts.spend_entry_key(hash_of_secret(key), self.clock.now())
        return self.begin(host) if host and self.hosts.host(host) else None

    def begin(self, host: str, *, instead_of: str = "") -> str:
        """A fresh token for a browser of this host; the one it had opens nothing any more."""
        if instead_of:
            self.leave(instead_of)
        now = self.clock.now()
        self.accounts.drop_tokens_before(now - SESSION_LIVES)
        token = self.new_secret()
        self.accounts.add_host_token(hash_of_secret(token), host, now)
        return token

    def leave(self, token: str) -> None:
        """Let the token of a browser open the desk no more."""
        self.accounts.drop_host_token(hash_of_secret(token))

    def host_of_token(self, token: str) -> Host | None:
        """The host of a token, if there is one."""
        return self.host_of_session(hash_of_secret(token)) if token else None

    def host_of_session(self, session: str) -> Host | None:
        """The host of a session, as `session_of_cookie_header` names it; None once it has ended."""
        made_after = self.clock.now() - SESSION_LIVES
        host = self.accounts.host_of_token(session, made_after=made_after) if session else None
        return self.hosts.host(host) if host else None


def session_of_cookie_header(header: str) -> str:
    """The session that a raw Cookie header names, by the hash of its token; empty if it names none."""
    try:
        cookie = SimpleCookie(header)
    except CookieError:
        return ""
    token = cookie[COOKIE].value if COOKIE in cookie else ""
    return hash_of_secret(token) if token else ""


def form_proof(token: str) -> str:
    """What a form must hold so that it was made for this browser: another site cannot know it."""
    return hash_of_secret(f"form {token}")
