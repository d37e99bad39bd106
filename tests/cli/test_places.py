"""Addresses, and settings from the environment and the options."""

from pathlib import Path

import pytest

from quizroom.cli.places import own_address, players_address
from quizroom.settings import BadSettings, Settings, default_data_folder, read_settings


@pytest.mark.parametrize(
    "host,address",
    [("0.0.0.0", "http://127.0.0.1:8000"), ("192.0.2.7", "http://192.0.2.7:8000")],  # noqa: S104 - compared with
)
def test_the_machine_itself_finds_the_server_near_by(host: str, address: str) -> None:
    assert own_address(Settings(host=host), 8000) == address


def test_players_use_the_address_that_was_given_or_the_one_listened_on() -> None:
    assert players_address(Settings(address="https://review.example/"), 8000) == "https://review.example"
    assert players_address(Settings(host="192.0.2.7"), 8001) == "http://192.0.2.7:8001"


def test_players_on_the_network_get_this_machines_address() -> None:
    address = players_address(Settings(), 8000)
    assert address.startswith("http://")
    assert address.endswith(":8000")
    assert "0.0.0.0" not in address  # noqa: S104 - compared with


def test_options_come_before_the_environment_and_that_before_the_defaults() -> None:
    environment = {"QUIZROOM_PORT": "9000", "QUIZROOM_GATHER_MS": "5", "HOME": "/x"}
    settings = read_settings(environment, {"port": 9001, "host": None})
    assert (settings.port, settings.gather_ms, settings.host) == (9001, 5, "0.0.0.0")  # noqa: S104 - compared with


@pytest.mark.parametrize(
    "environment,named",
    [
        ({"QUIZROOM_PORT": "70000"}, ["port"]),
        (
            {"QUIZROOM_PORT": "x", "QUIZROOM_CAPACITY": "0", "QUIZROOM_GATHER_MS": "-1"},
            ["port", "capacity", "gather_ms"],
        ),
    ],
)
def test_all_settings_at_fault_are_named_at_once(environment: dict[str, str], named: list[str]) -> None:
    with pytest.raises(BadSettings) as bad:
        read_settings(environment, {})
    assert all(name in str(bad.value) for name in named)


def test_data_lies_in_the_users_data_folder() -> None:
    # XDG Base Directory Specification, from memory
    assert default_data_folder({"XDG_DATA_HOME": "/data"}) == Path("/data/quizroom")
    assert default_data_folder({}) == Path.home() / ".local" / "share" / "quizroom"


def test_the_database_lies_in_the_data_folder() -> None:
    assert Settings(data=Path("/data")).database_url == "sqlite:////data/quizroom.sqlite"
