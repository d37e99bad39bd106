"""Passwords: which are good, how often one may be guessed, and how they are kept."""

import subprocess
import sys
import threading
from collections.abc import Callable
from typing import Any

import pytest
from argon2 import extract_parameters
from argon2.low_level import Type, hash_secret_raw
from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.service.passwords import (
    FOR_ONE,
    IN_ALL,
    LONGEST_PASSWORD,
    SHORTEST_PASSWORD,
    PasswordTries,
    fault_of_password,
    tidy_password,
)
from quizroom.service.tries import MOST_COUNTED, OwnTries
from quizroom.storage.argon2_passwords import Argon2Passwords

GOOD = "bursa ochre lantern Tuesday"


@pytest.mark.parametrize(
    "password,fits",
    [
        (GOOD, True),
        ("x" * SHORTEST_PASSWORD, False),
        ("short but odd 7", True),
        ("short but odd", False),
        ("T. BrackenT. BrackenT. Bracken", False),
        ("橈骨と尺骨のあいだの骨間膜を覚える", True),
        (GOOD * 20, False),
    ],
)
def test_a_password_is_long_and_no_plain_pattern(password: str, fits: bool) -> None:  # noqa: FBT001 - what the test expects
    assert (fault_of_password(password, "T. Bracken") == "") == fits


@settings(max_examples=50)
@given(st.text(max_size=250), st.text(max_size=40))
def test_a_fault_is_told_in_a_sentence(password: str, name: str) -> None:
    fault = fault_of_password(password, name)
    assert not fault or fault.endswith(".")
    if not fault:
        assert SHORTEST_PASSWORD <= len(password) <= LONGEST_PASSWORD


def test_the_same_letters_are_the_same_password_however_they_were_typed() -> None:
    assert tidy_password("mu\u0308ller-elder") == tidy_password("m\u00fcller-elder")


def test_ten_tries_of_an_account_and_then_one_in_five_minutes() -> None:
    tries = PasswordTries()
    assert [tries.take("sorrel", 0) for _ in range(11)] == [True] * 10 + [False]
    assert tries.take("bracken", 0)
    assert not tries.take("sorrel", 299)
    assert tries.take("sorrel", 301)
    assert not tries.take("sorrel", 302)


def test_a_right_password_gives_all_tries_back() -> None:
    tries = PasswordTries()
    for _ in range(9):
        tries.take("sorrel", 0)
    assert tries.take("sorrel", 0)
    tries.give_back("sorrel", 0)
    assert tries.take("sorrel", 0)


def test_all_accounts_together_are_bounded_too() -> None:
    tries = PasswordTries()
    taken = [tries.take(f"account {number}", 1000) for number in range(150)]
    assert taken.count(True) == IN_ALL.most
    assert tries.take("another", 1001.5)
    assert not tries.take("another", 1001.5)


@settings(max_examples=50)
@given(st.lists(st.tuples(st.sampled_from("abc"), st.floats(0, 600)), max_size=120))
def test_no_order_of_tries_yields_more_than_the_limits(tried: list[tuple[str, float]]) -> None:
    tries, now, granted = PasswordTries(), 0.0, {"a": 0, "b": 0, "c": 0}
    for account, gap in tried:
        now += gap
        granted[account] += tries.take(account, now)
    assert all(count <= FOR_ONE + now / 300 + 1e-6 for count in granted.values())
    assert sum(granted.values()) <= IN_ALL.most + now


def test_a_guesser_of_many_names_cannot_fill_the_memory() -> None:
    own = OwnTries()
    tries = PasswordTries(tries=own)
    for number in range(12_000):
        tries.take(f"name {number}", number * 1.0)
    assert len(own.counted) <= MOST_COUNTED + 2


def test_a_password_fits_its_own_hash_alone() -> None:
    passwords = Argon2Passwords()
    kept = passwords.hashed(GOOD)
    assert passwords.fits(kept, GOOD)
    assert not passwords.fits(kept, GOOD + " ")
    assert not passwords.fits("no hash", GOOD)
    assert GOOD not in kept
    assert passwords.hashed(GOOD) != kept


def test_hashes_have_the_parameters_of_rfc_9106() -> None:
    # RFC 9106, section 4: "t=3 iterations, p=4 lanes, m=2^(16) (64 MiB of RAM), 128-bit salt, and 256-bit
    # tag size. This is the SECOND RECOMMENDED option."
    kept = Argon2Passwords().hashed(GOOD)
    made = extract_parameters(kept)
    assert (made.type, made.time_cost, made.parallelism, made.memory_cost) == (Type.ID, 3, 4, 2**16)
    assert (made.salt_len, made.hash_len) == (16, 32)
    assert not Argon2Passwords().is_outdated(kept)
    assert Argon2Passwords().is_outdated(kept.replace("t=3", "t=2"))


def test_the_library_computes_what_the_rfc_prints() -> None:
    # RFC 9106, section 5.3, without secret and associated data: this one, with neither, is from the
    # reference implementation's test.c ("password", "somesalt", t=2, m=2^16, p=1, Argon2id).
    tag = hash_secret_raw(b"password", b"somesalt", 2, 2**16, 1, 32, Type.ID)
    assert tag.hex() == "09316115d5cf24ed5a15a31a3ba326e5cf32edc24702987c02b6566f61913cf7"


def test_the_slow_part_is_done_where_it_was_told_to() -> None:
    here, threads = threading.get_ident(), list[int]()

    def apart(work: Callable[..., Any], *given: Any) -> Any:
        found: list[Any] = []

        def carry_out() -> None:
            threads.append(threading.get_ident())
            found.append(work(*given))

        thread = threading.Thread(target=carry_out)
        thread.start()
        thread.join()
        return found[0]

    passwords = Argon2Passwords(apart)
    assert passwords.fits(passwords.hashed(GOOD), GOOD)
    assert len(threads) == 2
    assert here not in threads


def test_a_server_that_nobody_signs_in_to_does_not_load_the_library() -> None:
    loads = "import sys, quizroom.wiring, quizroom.pages.host_parts; sys.exit('argon2' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", loads], check=False).returncode == 0
