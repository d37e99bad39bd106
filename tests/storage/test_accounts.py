"""The contract of accounts and of the heartbeat."""

from concurrent.futures import ThreadPoolExecutor

from quizroom.service.ports import Accounts, Heartbeat
from tests.room.samples import after


class TestAccounts:
    """What `service.ports.Accounts` promises."""

    def test_a_key_is_spent_once(self, accounts: Accounts) -> None:
        accounts.add_entry_key("k", "owner", after(60))
        assert [accounts.spend_entry_key("k", after(1)) for _ in range(3)] == ["owner", None, None]

    def test_a_key_expires(self, accounts: Accounts) -> None:
        accounts.add_entry_key("k", "owner", after(60))
        assert not accounts.spend_entry_key("k", after(60))
        assert not accounts.spend_entry_key("k", after(1))

    def test_a_key_is_good_until_it_expires(self, accounts: Accounts) -> None:
        accounts.add_entry_key("k", "owner", after(60))
        assert accounts.spend_entry_key("k", after(59.9))

    def test_an_unknown_key_is_no_good_and_costs_no_other(self, accounts: Accounts) -> None:
        accounts.add_entry_key("k", "owner", after(60))
        assert not accounts.spend_entry_key("", after(1))
        assert not accounts.spend_entry_key("another", after(1))
        assert accounts.spend_entry_key("k", after(1))

    def test_of_many_who_spend_a_key_at_once_one_gets_in(self, accounts: Accounts) -> None:
        accounts.add_entry_key("k", "owner", after(60))
        with ThreadPoolExecutor(4) as pool:
            spent = list(pool.map(lambda _: accounts.spend_entry_key("k", after(1)), range(12)))
        assert spent.count("owner") == 1

    def test_a_token_tells_its_host(self, accounts: Accounts) -> None:
        accounts.add_host_token("t", "owner", after(0))
        found = [accounts.host_of_token(token, made_after=after(-1)) for token in ("t", "T", "")]
        assert found == ["owner", None, None]

    def test_a_key_opens_the_desk_of_its_own_host(self, accounts: Accounts) -> None:
        accounts.add_entry_key("k", "assistant", after(60))
        assert accounts.spend_entry_key("k", after(1)) == "assistant"

    def test_a_token_that_is_too_old_tells_nothing(self, accounts: Accounts) -> None:
        accounts.add_host_token("t", "owner", after(5))
        ages = (4.9, 5, 6)
        assert [accounts.host_of_token("t", made_after=after(age)) for age in ages] == ["owner", None, None]
        accounts.drop_tokens_before(after(5))
        assert accounts.host_of_token("t", made_after=after(0)) is None

    def test_a_host_can_be_signed_out_everywhere(self, accounts: Accounts) -> None:
        for token, host in (("t", "bracken"), ("u", "bracken"), ("v", "sorrel")):
            accounts.add_host_token(token, host, after(0))
        accounts.add_entry_key("k", "bracken", after(60))
        accounts.drop_tokens_of("bracken")
        left = [accounts.host_of_token(token, made_after=after(-1)) for token in ("t", "u", "v")]
        assert left == [None, None, "sorrel"]
        assert accounts.spend_entry_key("k", after(1)) is None


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
