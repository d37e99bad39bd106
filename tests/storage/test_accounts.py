"""The contract of accounts and of the heartbeat."""

from concurrent.futures import ThreadPoolExecutor

from quizroom.service.ports import Accounts, Heartbeat
from tests.room.samples import after


class TestAccounts:
    """What `service.ports.Accounts` promises."""

    def test_a_key_is_spent_once(self, accounts: Accounts) -> None:
        accounts.add_entry_key("k", after(60))
        assert [accounts.spend_entry_key("k", after(1)) for _ in range(3)] == [True, False, False]

    def test_a_key_expires(self, accounts: Accounts) -> None:
        accounts.add_entry_key("k", after(60))
        assert not accounts.spend_entry_key("k", after(60))
        assert not accounts.spend_entry_key("k", after(1))

    def test_a_key_is_good_until_it_expires(self, accounts: Accounts) -> None:
        accounts.add_entry_key("k", after(60))
        assert accounts.spend_entry_key("k", after(59.9))

    def test_an_unknown_key_is_no_good_and_costs_no_other(self, accounts: Accounts) -> None:
        accounts.add_entry_key("k", after(60))
        assert not accounts.spend_entry_key("", after(1))
        assert not accounts.spend_entry_key("another", after(1))
        assert accounts.spend_entry_key("k", after(1))

    def test_of_many_who_spend_a_key_at_once_one_gets_in(self, accounts: Accounts) -> None:
        accounts.add_entry_key("k", after(60))
        with ThreadPoolExecutor(4) as pool:
            spent = list(pool.map(lambda _: accounts.spend_entry_key("k", after(1)), range(12)))
        assert spent.count(True) == 1

    def test_a_token_tells_its_host(self, accounts: Accounts) -> None:
        accounts.add_host_token("t", "owner", after(0))
        assert [accounts.host_of_token(token) for token in ("t", "T", "")] == ["owner", None, None]


class TestHeartbeat:
    """What `service.ports.Heartbeat` promises."""

    def test_there_is_no_beat_at_first(self, heartbeat: Heartbeat) -> None:
        assert heartbeat.last_beat() is None

    def test_a_worker_whose_clock_is_behind_takes_nothing_back(self, heartbeat: Heartbeat) -> None:
        heartbeat.beat(after(2))
        heartbeat.beat(after(1))
        assert heartbeat.last_beat() == after(2)

    def test_the_last_beat_is_kept_to_the_millisecond_in_utc(self, heartbeat: Heartbeat) -> None:
        heartbeat.beat(after(1))
        heartbeat.beat(after(2.125))
        assert heartbeat.last_beat() == after(2.125)
