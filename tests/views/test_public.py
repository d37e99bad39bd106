"""What anybody in the room may see, apart from results."""

import pytest

from quizroom.room.commands import CloseRound, OpenRound, PauseRound, ShowStandings
from quizroom.room.state import Room
from quizroom.views.item_model import ClockFace, OptionFace
from quizroom.views.public import CAUTIONS
from quizroom.views.public_model import StandingRow
from tests.room.sample_items import NERVES, all_formats, one_best, typed
from tests.room.samples import after, answering, gathered, ordered, plan, prepared, says
from tests.views.seen import public


def ms(seconds: float) -> int:
    return round(after(seconds).timestamp() * 1000)


def test_before_the_first_round_there_is_no_item_and_no_clock() -> None:
    view = public(gathered())
    assert (view.round, view.rounds, view.item, view.clock) == (0, len(all_formats()), None, None)
    assert (view.door_code, view.players, view.answered) == ("CDFHJ", 2, 0)
    assert (view.title, view.course) == ("Shoulder and arm", "HHC-KN 232 Muscles and Movement")
    assert public(prepared()).door_code == ""


def test_an_item_is_shown_as_asked_with_letters_for_names() -> None:
    item = public(answering()).item
    assert item is not None
    assert item.options == tuple(
        OptionFace(letter=letter, text=text) for letter, text in zip("ABCD", NERVES, strict=True)
    )
    assert (item.round, item.stem, item.pick) == (1, "Which nerve supplies the deltoid?", 1)


@pytest.mark.parametrize(
    "room,clock",
    [
        (answering(), ClockFace(limit_ms=30_000, closes_at=ms(30), left_ms=None, paused=False)),
        (
            ordered(answering(), PauseRound(round=1), at=after(10)),
            ClockFace(limit_ms=30_000, closes_at=None, left_ms=20_000, paused=True),
        ),
        (
            answering(by=plan(timing="untimed")),
            ClockFace(limit_ms=None, closes_at=None, left_ms=None, paused=False),
        ),
        (ordered(answering(), CloseRound(round=1, by_host=True)), None),
    ],
)
def test_the_clock_runs_stands_or_is_not_there(room: Room, clock: ClockFace | None) -> None:
    assert public(room).clock == clock


def test_the_cautions_of_the_trade_are_always_there() -> None:
    assert public(gathered()).cautions == CAUTIONS
    assert "Not for diagnosis" in CAUTIONS[0]


def test_standings_are_shown_between_rounds_and_only_if_they_are_on() -> None:
    room = ordered(answering(one_best(), typed(), by=plan(standings=True)), says("bo", "B"))
    assert public(room).standings is None
    closed = ordered(room, CloseRound(round=1, by_host=True))
    assert public(closed).standings == (
        StandingRow(place=1, handle="Bo", marks=1, of=1),
        StandingRow(place=2, handle="Ada", marks=0, of=1),
    )
    assert public(ordered(closed, OpenRound(round=2))).standings is None
    assert public(ordered(closed, ShowStandings(on=False))).standings is None


def test_versions_grow_with_every_event() -> None:
    assert public(prepared()).version == 1
    assert public(answering()).version == 5
    assert public(answering()).now == ms(5000)
