"""Marks after re-keying equal those of a reference that reads the stored log by itself."""

import json
from itertools import combinations
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.marking import RoomMarks, marks_of_room
from quizroom.questions.model import Item
from quizroom.room.change_commands import RekeyItem
from quizroom.room.commands import CloseRound, Command, RestoreItem, StrikeItem, SubmitAnswer
from quizroom.room.events import Event
from quizroom.room.laying_out import prepare
from quizroom.room.rules import decide
from quizroom.room.state import Room
from quizroom.storage.event_codec import write_event
from tests.room.refusing import code_of
from tests.room.sample_items import all_formats
from tests.room.samples import NOON, answering, folded, plan, preparation

PLAYERS = ("ada", "bo", "cem")
NAMES = {
    "axillary nerve": ("axillary nerve", "circumflex nerve"),
    "biceps brachii": ("biceps brachii", "biceps of the arm"),
    "brachialis": ("brachialis", "brachialis anticus"),
}
"""Names of the same thing; whatever is not here has one name."""
WORDS = (
    "axillary nerve",
    "circumflex nerve",
    "radial nerve",
    "median nerve",
    "brachialis",
    "biceps of the arm",
)


def letters(item: Item) -> st.SearchStrategy[tuple[str, ...]]:
    known = [option.letter for option in item.options]
    match item.format:
        case "ordering":
            return st.permutations(known).map(tuple)
        case "matching":
            return st.lists(st.sampled_from(known), min_size=3, max_size=3).map(tuple)
        case _:
            return st.lists(st.sampled_from(known), min_size=1, unique=True).map(tuple)


def answers(item: Item) -> st.SearchStrategy[Command]:
    who = st.sampled_from(PLAYERS)
    if not item.options:
        words = st.lists(st.sampled_from(WORDS), min_size=1, max_size=item.pick).map(tuple)
        return st.builds(SubmitAnswer, player=who, round=st.just(1), typed=words)
    chosen = letters(item).map(lambda all_: all_[: item.pick])
    return st.builds(SubmitAnswer, player=who, round=st.just(1), choice=chosen)


def changes(item: Item) -> st.SearchStrategy[Command]:
    terms = st.lists(st.sampled_from(WORDS), min_size=1, max_size=4, unique=True).map(tuple)
    wish = {"key": letters(item)} if item.options else {"terms": terms}
    rekey = st.one_of(st.builds(RekeyItem, round=st.just(1), **wish), st.just(RekeyItem(round=1)))
    return st.one_of(rekey, rekey, st.just(StrikeItem(round=1)), st.just(RestoreItem(round=1)))


@st.composite
def reviews(draw: st.DrawFn) -> tuple[Item, list[Command]]:
    item = draw(st.sampled_from(all_formats()))
    during = draw(st.lists(st.one_of(answers(item), answers(item), changes(item)), max_size=8))
    afterwards = draw(st.lists(changes(item), max_size=4))
    return item, [*during, CloseRound(round=1, by_host=True), *afterwards]


@settings(max_examples=50, deadline=None)
@given(reviews())
def test_marks_kept_or_fresh_equal_the_reference_after_any_change(review: tuple[Item, list[Command]]) -> None:
    item, commands = review
    room, known = answering(item, players=PLAYERS), None
    log: list[Event] = [*prepare("room-1", preparation(item, by=plan()), NOON)]
    for command in commands:
        if code_of(room, command) is not None:
            continue
        events = decide(room, command, NOON)
        room, log = folded(room, events), [*log, *events]
        known = marks_of_room(room, known)
        assert known == marks_of_room(room)
    assert known is not None
    assert as_numbers(room, known) == reference([json.loads(write_event(event)) for event in log])


def as_numbers(room: Room, marks: RoomMarks) -> dict[str, tuple[float, int]]:
    return {player: (marks.totals[player].marks, marks.totals[player].of) for player in room.players}


def reference(log: list[dict[str, Any]]) -> dict[str, tuple[float, int]]:
    """Marks and how many rounds count, from the stored events alone."""
    item = log[0]["event"]["items"][0]
    dealt = item["key"] or [accepted["text"] for accepted in item["accepted"]]
    key, struck, said = dealt, False, {}
    for stored in log[1:]:
        event = stored["event"]
        match stored["kind"]:
            case "ItemRekeyed":
                key = event["key"] or event["terms"]
            case "KeyRestored":
                key = dealt
            case "ItemStruck" | "ItemRestored":
                struck = stored["kind"] == "ItemStruck"
            case "AnswerAccepted":
                said[event["player"]] = event["choice"] or event["typed"]
            case _:
                pass
    if struck:
        return dict.fromkeys(PLAYERS, (0.0, 0))
    return {one: (round(worth(item, key, said[one]), 4) if one in said else 0.0, 1) for one in PLAYERS}


def worth(item: dict[str, Any], key: list[str], given_: list[str]) -> float:
    """One answer under one key, by the trade's table of scoring."""
    match item["format"]:
        case "one_best":
            return float(given_[0] in key)
        case "ordering":
            pairs = list(combinations(key, 2))
            kept = sum(given_.index(one) < given_.index(other) for one, other in pairs)
            return max(0.0, (2 * kept - len(pairs)) / len(pairs))
        case "matching":
            return sum(one == other for one, other in zip(given_, key, strict=True)) / len(key)
        case _:
            right = {meant(text) for text in key}
            said = {meant(text) for text in given_}
            pick = int(item["pick"])
            return max(0.0, (len(said & right) - len(said - right)) / pick)


def meant(text: str) -> str:
    return next((concept for concept, names in NAMES.items() if text in names), text)
