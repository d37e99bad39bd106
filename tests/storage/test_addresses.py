"""Which addresses of services are taken, and what is said about others."""

from pathlib import Path

import pytest

from quizroom.settings import BadSettings, read_settings

POSTGRESQL = "postgresql://quizroom:secret@db:5432/quizroom"


@pytest.mark.parametrize(
    "given",
    [POSTGRESQL, POSTGRESQL.replace("postgresql", "postgres"), POSTGRESQL.replace("://", "+psycopg://")],
)
def test_postgresql_is_spoken_to_by_its_one_driver_however_it_is_written(given: str) -> None:
    settings = read_settings({"QUIZROOM_DATABASE_URL": given}, {})
    assert settings.database_url == "postgresql+psycopg://quizroom:secret@db:5432/quizroom"
    assert settings.is_shared


def test_without_an_address_the_data_folder_holds_the_database() -> None:
    settings = read_settings({"QUIZROOM_DATA": "/data"}, {})
    assert settings.database_url == f"sqlite:///{Path('/data') / 'quizroom.sqlite'}"
    assert not settings.is_shared
    assert settings.fanout_url == ""


@pytest.mark.parametrize(
    "environment,told",
    [
        ({"QUIZROOM_DATABASE_URL": "mysql://db/quizroom"}, "postgresql://USER"),
        ({"QUIZROOM_DATABASE_URL": "db:5432"}, "postgresql://USER"),
        ({"QUIZROOM_DATABASE_URL": POSTGRESQL, "QUIZROOM_FANOUT_URL": "http://redis"}, "redis://HOST"),
        ({"QUIZROOM_FANOUT_URL": "redis://redis:6379/0"}, "set database_url as well"),
        ({"QUIZROOM_DATABASE_CONNECTIONS": "1"}, "database_connections"),
        ({"QUIZROOM_TRANSPORTS": "pigeons"}, "transports"),
    ],
)
def test_an_address_that_cannot_be_used_is_told_with_what_to_give(
    environment: dict[str, str], told: str
) -> None:
    with pytest.raises(BadSettings, match=told) as faults:
        read_settings(environment, {})
    assert "secret" not in str(faults.value)
