"""`quizroom hosts`: who may host, for whoever runs the server."""

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

if TYPE_CHECKING:
    from sqlalchemy import Engine

    from quizroom.service.host_ports import Host
    from quizroom.service.hosts import Hosts
    from quizroom.settings import Settings

DATA = click.option(
    "--data", type=click.Path(path_type=Path, file_okay=False), help="Data folder of the server."
)
PORT = click.option("--port", type=int, help="Port of the server [default: 8000].")


@click.group()
def hosts() -> None:
    """List, invite, let in anew and remove hosts; owners do so themselves on the desk's page Hosts."""


@hosts.command("list")
@DATA
def list_hosts(**given: Any) -> None:
    """List the hosts with their roles, and how they come in."""
    with _hosts_of(given) as (known, _, _):
        everybody = {host.id: host for host in known.store.all()}
        for host in everybody.values():
            helps = f" of {everybody[host.helps].name}" if host.helps in everybody else ""
            way = "password" if host.has_password else "link"
            click.echo(f"{host.name}: {host.role}{helps}, comes in by {way}")


@hosts.command()
@click.option("--role", type=click.Choice(["owner", "assistant"]), default="owner", show_default=True)
@click.option("--helps", metavar="NAME", default="", help="The owner whom an assistant helps.")
@DATA
@PORT
def add(role: Any, helps: str, **given: Any) -> None:
    """Print an invitation: a link by which somebody becomes a host, with a name and password of their own."""
    from quizroom.service.host_ports import FIRST_OWNER  # noqa: PLC0415 - `serve` must not load this first

    with _hosts_of(given) as (known, settings, _):
        owner = _named(known, helps).id if helps else FIRST_OWNER
        first = known.store.host(FIRST_OWNER)
        if first is None:
            raise click.ClickException("The first owner is missing from the database. Restore a backup.")
        key = known.invite(first, role=role, helps=owner)
        click.echo(f"{_address(settings)}/invitation/{key}")


@hosts.command()
@click.argument("name")
@DATA
@PORT
def reset(name: str, **given: Any) -> None:
    """Take a host's password away, close their desks, and print a one-time link that lets them in anew."""
    from quizroom.pages.host_parts import entry_over  # noqa: PLC0415 - `serve` must not load this first

    with _hosts_of(given) as (known, settings, engine):
        host = _named(known, name)
        known.reset(host)
        click.echo(
            f"{_address(settings)}/desk/enter/{entry_over(engine, clock=known.clock).new_key(host.id)}"
        )


@hosts.command()
@click.argument("name")
@click.option("--reviews-to", metavar="NAME", required=True, help="The owner who gets their reviews.")
@DATA
def remove(name: str, reviews_to: str, **given: Any) -> None:
    """Remove a host; their reviews and assistants go to another owner."""
    from quizroom.service.rooms import Rooms  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.storage.event_log import SqlEventLog  # noqa: PLC0415 - likewise

    with _hosts_of(given) as (known, _, engine):
        gone, heir = _named(known, name), _named(known, reviews_to)
        log = SqlEventLog(engine)
        rooms = Rooms(log=log, clock=known.clock, on_change=lambda _: None, shared=True)
        reviews = known.remove(gone, heir=heir, rooms=rooms, log=log)
        went = f"{reviews} {'review' if reviews == 1 else 'reviews'} went to {heir.name}"
        click.echo(f"{gone.name} is no host any more; {went}.")


@contextmanager
def _hosts_of(given: Any) -> Iterator[tuple["Hosts", "Settings", "Engine"]]:
    from quizroom.cli.places import clear_ends, settings_of  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.pages.host_parts import hosts_over  # noqa: PLC0415 - likewise
    from quizroom.service.hosts import HostFault  # noqa: PLC0415 - likewise
    from quizroom.storage.database import open_database  # noqa: PLC0415 - likewise
    from quizroom.storage.system_clock import SystemClock  # noqa: PLC0415 - likewise

    settings = settings_of(given, make_data_folder=True)
    with clear_ends(settings):
        engine = open_database(settings.database_url)
        try:
            yield hosts_over(engine, clock=SystemClock(days_ahead=settings.days_ahead)), settings, engine
        except HostFault as fault:
            raise click.ClickException(str(fault)) from fault
        finally:
            engine.dispose()


def _named(known: "Hosts", name: str) -> "Host":
    from quizroom.service.hosts import NO_SUCH_HOST, HostFault  # noqa: PLC0415 - as above

    host = known.store.named(name)
    if host is None:
        raise HostFault(f"{name}: {NO_SUCH_HOST}")
    return host


def _address(settings: "Settings") -> str:
    from quizroom.cli.places import players_address  # noqa: PLC0415 - as above

    return players_address(settings, settings.port)
