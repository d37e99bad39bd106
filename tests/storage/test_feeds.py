"""Calendar feeds, in memory and in a database."""

from dataclasses import replace
from datetime import UTC, datetime

import pytest
from sqlalchemy import Engine

from quizroom.service.feed_ports import FeedStore, KeptFeed
from quizroom.storage.feeds import MemoryFeeds, SqlFeeds
from quizroom.storage.players import SqlPlayers

NOW = datetime(2031, 10, 20, 9, 30, tzinfo=UTC)
ADAS = KeptFeed(player="ada", id="f1", at="18:00", told=b"")


@pytest.fixture
def feeds(database: Engine | None) -> FeedStore:
    if database is None:
        return MemoryFeeds()
    for player in ("ada", "bo"):
        SqlPlayers(database).see(player, NOW)
    return SqlFeeds(database)


def test_a_feed_is_found_by_its_secret_alone(feeds: FeedStore) -> None:
    feeds.open_feed(ADAS, "hash 1", NOW)
    assert feeds.feed_of_secret("hash 1") == feeds.feed_of_player("ada") == ADAS
    assert feeds.feed_of_secret("hash 2") is None
    assert feeds.feed_of_player("bo") is None


def test_a_new_secret_takes_the_place_of_the_old(feeds: FeedStore) -> None:
    feeds.open_feed(ADAS, "hash 1", NOW)
    feeds.open_feed(replace(ADAS, at="07:30"), "hash 2", NOW)
    assert feeds.feed_of_secret("hash 1") is None
    assert feeds.feed_of_secret("hash 2") == replace(ADAS, at="07:30")


def test_a_closed_feed_opens_nothing_and_others_stay(feeds: FeedStore) -> None:
    feeds.open_feed(ADAS, "hash 1", NOW)
    feeds.open_feed(replace(ADAS, player="bo"), "hash 2", NOW)
    feeds.close_feed("ada")
    feeds.close_feed("cem")
    assert feeds.feed_of_secret("hash 1") is None
    assert feeds.feed_of_secret("hash 2") is not None


def test_what_was_told_is_kept_for_that_player(feeds: FeedStore) -> None:
    feeds.open_feed(ADAS, "hash 1", NOW)
    feeds.open_feed(replace(ADAS, player="bo"), "hash 2", NOW)
    feeds.keep_told("ada", b"[1]")
    feeds.keep_told("cem", b"[2]")
    assert feeds.feed_of_player("ada") == replace(ADAS, told=b"[1]")
    assert feeds.feed_of_player("bo") == replace(ADAS, player="bo")
