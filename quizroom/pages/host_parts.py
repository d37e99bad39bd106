"""Hosts over a database: put together for the server and for the commands alike."""

from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from quizroom.pages.host_entry import HostEntry
from quizroom.service.hosts import Hosts
from quizroom.service.passwords import PasswordTries
from quizroom.service.ports import Clock
from quizroom.service.tries import OwnTries, Tries
from quizroom.storage.accounts import SqlAccounts
from quizroom.storage.argon2_passwords import Argon2Passwords
from quizroom.storage.chance import new_id, new_secret
from quizroom.storage.hosts import SqlHosts

if TYPE_CHECKING:
    from sqlalchemy import Engine


def entry_over(engine: "Engine", *, clock: Clock) -> HostEntry:
    """How hosts get in."""
    return HostEntry(accounts=SqlAccounts(engine), hosts=SqlHosts(engine), clock=clock, new_secret=new_secret)


def _here(work: Callable[..., Any], *given: Any) -> Any:
    return work(*given)


def hosts_over(
    engine: "Engine", *, clock: Clock, tries: Tries | None = None, run_apart: Callable[..., Any] = _here
) -> Hosts:
    """What can be done about hosts; `run_apart(work, *given)` does what would keep others waiting, and
    `tries` counts wrong passwords.
    """
    return Hosts(
        store=SqlHosts(engine),
        accounts=SqlAccounts(engine),
        passwords=Argon2Passwords(run_apart),
        clock=clock,
        new_secret=new_secret,
        new_id=new_id,
        tries=PasswordTries(tries=tries or OwnTries()),
    )
