"""The contract of hosts: who may host, by which name, and who was invited."""

from concurrent.futures import ThreadPoolExecutor

import pytest
from sqlalchemy import Engine

from quizroom.service.host_ports import FIRST_NAME, FIRST_OWNER, Host, HostStore, Invitation
from quizroom.service.roster_ports import Roster
from quizroom.storage.host_memory import MemoryHosts
from quizroom.storage.hosts import INHERITED, SqlHosts
from quizroom.storage.rosters import SqlRosters
from tests.room.samples import after
from tests.storage.databases import OpenHere

SORREL = Host(id="s", name="Dr. M. Sorrel", role="owner", has_password=True)
BRACKEN = Host(id="b", name="T. Bracken", role="assistant", helps="s", has_password=True)


@pytest.fixture
def store(database: Engine | None) -> HostStore:
    """Hosts of each kind of store; the first owner alone."""
    return MemoryHosts() if database is None else SqlHosts(database)


def invitation(key: str = "k", *, role: str = "owner", helps: str = "", expires: float = 60) -> Invitation:
    return Invitation(
        key_hash=key,
        role="assistant" if role == "assistant" else "owner",
        helps=helps,
        made_by=FIRST_OWNER,
        expires_at=after(expires),
    )


def joined(store: HostStore, host: Host) -> None:
    store.invite(invitation(f"key of {host.id}", role=host.role, helps=host.helps))
    assert store.accept(f"key of {host.id}", host, f"hash of {host.id}", after(1))


class TestHosts:
    """What `service.host_ports.HostStore` promises."""

    def test_the_first_owner_is_there_from_the_start_without_a_password(self, store: HostStore) -> None:
        first = Host(id=FIRST_OWNER, name=FIRST_NAME, role="owner")
        assert store.all() == (first,)
        assert store.host(FIRST_OWNER) == store.named(" hOST ") == first
        assert store.password_hash(FIRST_OWNER) == ""

    def test_hosts_are_found_by_id_and_by_name_whatever_its_case(self, store: HostStore) -> None:
        joined(store, SORREL)
        joined(store, BRACKEN)
        assert store.host("b") == store.named("t. bracken") == BRACKEN
        assert [host.name for host in store.all()] == ["Dr. M. Sorrel", "Host", "T. Bracken"]
        assert (store.host("x"), store.named("x"), store.password_hash("x")) == (None, None, "")

    def test_a_password_is_kept_changed_and_taken_away(self, store: HostStore) -> None:
        joined(store, SORREL)
        assert store.password_hash("s") == "hash of s"
        for host in ("s", FIRST_OWNER):
            store.set_password(host, "another")
            known = store.host(host)
            assert known is not None
            assert (store.password_hash(host), known.has_password) == ("another", True)
        store.set_password("s", "")
        assert store.password_hash("s") == ""
        assert store.host("s") == Host(id="s", name="Dr. M. Sorrel", role="owner")

    def test_a_name_belongs_to_one_host(self, store: HostStore) -> None:
        joined(store, SORREL)
        assert store.rename(FIRST_OWNER, "Dr. Q. Yarrow")
        assert not store.rename("s", "DR. Q. YARROW")
        assert store.rename("s", "dr. m. sorrel")
        assert store.named("Host") is None
        store.invite(invitation("k"))
        assert not store.accept("k", Host(id="n", name="DR. M. SORREL", role="owner"), "h", after(1))
        assert store.accept("k", Host(id="n", name="Host", role="owner"), "h", after(1))

    def test_nobody_takes_the_name_that_the_first_owner_still_has(self, store: HostStore) -> None:
        store.invite(invitation("k"))
        assert not store.accept("k", Host(id="n", name="HOST", role="owner"), "h", after(1))
        assert [one.key_hash for one in store.invitations(after(1))] == ["k"]

    def test_who_is_removed_is_gone_with_their_invitations_and_their_assistants_help_the_heir(
        self, store: HostStore
    ) -> None:
        joined(store, SORREL)
        joined(store, BRACKEN)
        store.invite(invitation("k", role="assistant", helps="s"))
        store.invite(invitation("l"))
        store.remove("s", heir=FIRST_OWNER)
        assert (store.host("s"), store.named("Dr. M. Sorrel"), store.password_hash("s")) == (None, None, "")
        assistant = store.host("b")
        assert assistant is not None
        assert assistant.leads == FIRST_OWNER
        assert [one.key_hash for one in store.invitations(after(0))] == ["l"]

    def test_an_invitation_is_good_once_until_it_expires_or_is_withdrawn(self, store: HostStore) -> None:
        for key, expires in (("late", 60), ("soon", 30), ("gone", 5), ("back", 50)):
            store.invite(invitation(key, expires=expires))
        store.withdraw("back")
        store.withdraw("unknown")
        assert [one.key_hash for one in store.invitations(after(5))] == ["soon", "late"]
        assert store.invitations(after(5))[0] == invitation("soon", expires=30)
        assert not store.accept("gone", SORREL, "h", after(5))
        assert not store.accept("back", SORREL, "h", after(5))
        assert store.accept("late", SORREL, "h", after(59.9))
        assert not store.accept("late", BRACKEN, "h", after(59.9))
        assert store.host("b") is None

    def test_of_many_who_accept_an_invitation_at_once_one_becomes_a_host(self, store: HostStore) -> None:
        store.invite(invitation("k"))
        newcomers = [Host(id=f"n{number}", name=f"Name {number}", role="owner") for number in range(8)]
        with ThreadPoolExecutor(4) as pool:
            accepted = list(pool.map(lambda host: store.accept("k", host, "h", after(1)), newcomers))
        assert accepted.count(True) == 1
        assert len(store.all()) == 2


def test_whatever_is_kept_under_a_host_goes_to_their_heir() -> None:
    # A table with a host that is not among these has to be thought about: `NOT_INHERITED` or not.
    assert {str(table.name) for table in INHERITED} == {"own_items", "pictures", "rosters"}


def test_the_rosters_of_who_is_removed_are_those_of_the_heir(open_here: OpenHere) -> None:
    engine = open_here()
    hosts, rosters = SqlHosts(engine), SqlRosters(engine)
    joined(hosts, SORREL)
    rosters.keep(
        Roster(id="r", host="s", name="HHC-AN 140", created_at=after(0), changed_at=after(0), entries=())
    )
    hosts.remove("s", heir=FIRST_OWNER)
    assert [line.id for line in rosters.rosters_of(FIRST_OWNER)] == ["r"]
    assert rosters.rosters_of("s") == ()
