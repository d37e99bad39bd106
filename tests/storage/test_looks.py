"""Looks, answers, sets and wishes: the same contract in memory, in SQLite and in PostgreSQL."""

from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import orjson
import pytest
from sqlalchemy import Engine

from quizroom.exchange.history_file import history_json
from quizroom.second_look.asked import AskedLook, GivenAnswer, LookSet, Missed, Wishes
from quizroom.service.histories import History
from quizroom.service.look_ports import LookStore
from quizroom.service.ports import NotStored
from quizroom.storage.look_codec import read_look, write_look
from quizroom.storage.look_memory import MemoryLookStore
from quizroom.storage.look_store import SqlLookStore
from quizroom.storage.players import SqlPlayers
from tests.room.sample_items import all_formats
from tests.room.samples import NOON
from tests.storage.databases import OpenHere, read_only

ADA, BO = "a" * 64, "b" * 64
MISSED = Missed(title="Arm", at=NOON, stem="Which?", chosen="x", key_text=("y",), contrast="x is z.")


@pytest.fixture
def store(database: Engine | None) -> LookStore:
    """An empty store of each kind that knows two players."""
    if database is None:
        return MemoryLookStore()
    players = SqlPlayers(database)
    players.see(ADA, NOON)
    players.see(BO, NOON)
    return SqlLookStore(database)


def look(name: str, *, player: str = ADA, place: int = 1, set_id: str = "s", number: int = 0) -> AskedLook:
    return AskedLook(
        id=name,
        player=player,
        set=set_id,
        place=place,
        made_at=NOON + timedelta(seconds=place),
        course="c",
        origin="practice",
        item=all_formats()[number],
        missed=MISSED,
        fact="f",
    )


def answer(name: str, *, letter: str = "A") -> GivenAnswer:
    return GivenAnswer(
        look=name,
        choice=(letter,),
        typed=("long head",),
        certainty=3,
        took_ms=9000,
        answered_at=NOON,
        received_at=NOON + timedelta(seconds=1),
    )


def a_set(name: str = "s", *, at: int = 0) -> LookSet:
    return LookSet(
        id=name,
        player=ADA,
        kind="mock",
        title="Mock practical",
        course="c",
        seconds=60,
        made_at=NOON + timedelta(seconds=at),
    )


def test_looks_come_back_as_they_were_made(store: LookStore) -> None:
    made = [look(f"l{number}", place=number, number=number) for number in range(len(all_formats()))]
    store.add_looks(made)
    assert store.looks(ADA, [one.id for one in made]) == {one.id: one for one in made}
    assert store.looks_of_set(ADA, "s") == tuple(made)
    assert store.all_looks(ADA) == tuple(made)


def test_a_look_that_is_known_stays_as_it_was(store: LookStore) -> None:
    store.add_looks([look("l")])
    store.add_looks([replace(look("l"), course="other"), look("m")])
    assert store.looks(ADA, ["l", "m"]) == {"l": look("l"), "m": look("m")}


def test_nobody_sees_looks_of_others(store: LookStore) -> None:
    store.add_looks([look("l"), look("m", player=BO)])
    assert set(store.looks(BO, ["l", "m"])) == {"m"}
    assert store.looks_of_set(BO, "s") == (look("m", player=BO),)


def test_the_first_answer_stays(store: LookStore) -> None:
    store.add_looks([look("l")])
    store.add_answers(ADA, [answer("l", letter="A"), answer("l", letter="B")])
    store.add_answers(ADA, [answer("l", letter="C")])
    assert store.answers_of(ADA) == {"l": answer("l", letter="A")}


def test_nobody_answers_for_others_or_what_was_not_asked(store: LookStore) -> None:
    store.add_looks([look("l")])
    store.add_answers(BO, [answer("l")])
    store.add_answers(ADA, [answer("nothing")])
    assert store.answers_of(ADA) == store.answers_of(BO) == {}


def test_a_set_is_kept_once_with_its_looks(store: LookStore) -> None:
    store.add_set(a_set(), [look("l"), look("m", place=2)])
    store.add_set(replace(a_set(), title="again"), [look("n")])
    assert store.find_set(ADA, "s") == a_set()
    assert [one.id for one in store.looks_of_set(ADA, "s")] == ["l", "m"]
    assert store.find_set(BO, "s") is None


def test_sets_are_counted_from_a_time_on(store: LookStore) -> None:
    for number in range(3):
        store.add_set(a_set(f"s{number}", at=number), [])
    assert store.sets_since(ADA, NOON + timedelta(seconds=1)) == 2
    assert store.sets_since(BO, NOON) == 0


def test_wishes_are_kept_in_place_of_those_before(store: LookStore) -> None:
    assert store.wishes(ADA) is None
    store.set_wishes(ADA, Wishes(course="c", exam_date=date(2031, 12, 2), minutes_a_day=5, time_zone="UTC"))
    later = Wishes(course="", exam_date=None, minutes_a_day=20, time_zone="Europe/Paris")
    store.set_wishes(ADA, later)
    assert store.wishes(ADA) == later
    assert store.wishes(BO) is None


def test_many_looks_are_found_at_once(store: LookStore) -> None:
    made = [look(f"l{number}", place=number) for number in range(450)]
    store.add_looks(made)
    assert len(store.looks(ADA, [one.id for one in made])) == 450


def test_who_is_erased_as_a_player_is_erased_here(open_here: OpenHere) -> None:
    engine = open_here()
    players, store = SqlPlayers(engine), SqlLookStore(engine)
    for player in (ADA, BO):
        players.see(player, NOON)
    store.add_set(a_set(), [look("l")])
    store.add_looks([look("m", player=BO)])
    store.add_answers(ADA, [answer("l")])
    store.set_wishes(ADA, Wishes())
    players.erase(ADA)
    assert store.all_looks(ADA) == ()
    assert store.answers_of(ADA) == {}
    assert store.find_set(ADA, "s") is None
    assert store.wishes(ADA) is None
    assert store.all_looks(BO) == (look("m", player=BO),)


def test_what_cannot_be_kept_is_said(open_here: OpenHere, tmp_path: Path) -> None:
    engine = open_here()
    SqlPlayers(engine).see(ADA, NOON)
    engine.dispose()
    shut = read_only(tmp_path)
    with pytest.raises(NotStored):
        SqlLookStore(shut).add_looks([look("l")])
    shut.dispose()


def test_a_look_takes_little_room() -> None:
    body = write_look(look("l"))
    assert read_look(body) == look("l")
    assert len(body) < 4000


def test_the_export_holds_looks_and_answers_in_plain_words(open_here: OpenHere) -> None:
    engine = open_here()
    players, store = SqlPlayers(engine), SqlLookStore(engine)
    players.see(ADA, NOON)
    store.add_looks([look("l")])
    store.add_answers(ADA, [answer("l")])
    history = History(player=players.known(ADA), reviews=(), kept=players.kept_of(ADA))
    kept = orjson.loads(history_json(history, NOON))["kept"]
    assert kept["looks"][0]["body"]["item"]["stem"] == look("l").item.stem
    assert kept["look_answers"][0]["body"]["typed"] == ["long head"]
