"""Two classes in which the same happens, but in one a player has or takes more time and uses it.

What the wall and the other seats receive is the same byte for byte and at the same times: told by the real
loop, whose waiting is the only thing simulated.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from quizroom.realtime import wire_json
from quizroom.realtime.alarms import close_rounds_that_are_over
from quizroom.realtime.broadcast import Broadcast, keep_telling
from quizroom.room.bench_state import BenchRules
from quizroom.views.moment import milliseconds
from tests.realtime.hall import Hall
from tests.room.sample_items import one_best
from tests.room.samples import after, plan, preparation

SECONDS = 10
HOLDING = replace(plan(timing="fixed", seconds=SECONDS, standings=True), holds_results=True)
AT_BENCHES = replace(HOLDING, benches=BenchRules(how="choice", answers=False))
OTHERS = ("wall", "bo", "cem")
SECRET = "5" * 32
OPENED, SHOWN, OVER = 3.0, 27.0, 30.0


@dataclass(frozen=True, kw_only=True)
class Act:
    """Somebody says something at this second."""

    at: float
    who: str
    kind: str
    fields: dict[str, Any] = field(default_factory=dict)


class _Over(Exception):
    """The class has gone home."""


class Listened(Broadcast):
    """A broadcast during whose waiting the class goes on; it ends with the last act."""

    acts: list[Act]
    now_s: float
    hall: "ListenedHall"

    def wait(self, seconds: float) -> None:
        """Let time pass: until something is noted, at most so long."""
        until = self.now_s + seconds
        while self.acts and self.acts[0].at <= until:
            act = self.acts.pop(0)
            self.hall.pass_to(act.at)
            self.hall.carry_out(act)
            if self._wake.is_set():
                self._wake.clear()
                return
        if not self.acts:
            raise _Over
        self.hall.pass_to(until)


class ListenedHall(Hall):
    """A hall in simulated time; remembers what each of the others received, and when."""

    def __init__(self, acts: Iterable[Act]) -> None:
        """Play these acts."""
        super().__init__(telling=Listened)
        self.heard: list[tuple[float, str, str, str]] = []
        self.replies: dict[str, list[str]] = {}
        self.own: list[Any] = []
        assert isinstance(self.broadcast, Listened)
        self.told = self.broadcast
        self.told.acts, self.told.now_s, self.told.hall = sorted(acts, key=lambda act: act.at), 0.0, self

    def play(self) -> None:
        """Let the real loop tell until the class is over."""
        with pytest.raises(_Over):
            keep_telling(self.told, self.rooms.live, lambda: self.told.now_s)

    def pass_to(self, second: float) -> None:
        """Let time pass."""
        self.clock.move((after(second) - self.clock.now()).total_seconds())
        self.told.now_s = self.steady_s = second

    def carry_out(self, act: Act) -> None:
        """One act; replies to others are heard by them."""
        if act.who == "alarm":
            return close_rounds_that_are_over(self.rooms, self.clock)
        if act.who not in self.seats.all():
            self.connect(act.who, "owner" if act.who == "host" else "")
        fields = {"door_code": self.room().door_code} if act.kind in ("watch_wall", *COMING) else {}
        reply = self.say(act.who, act.kind, **fields, **act.fields)
        self.replies.setdefault(act.who, []).append(f"{act.kind} {reply['result']} {reply['code']}")
        if act.who in OTHERS:
            self.heard.append((self.told.now_s, "reply", act.who, wire_json.dumps(reply)))
        return None

    def _emit(self, event: str, data: Any, *, to: str) -> None:
        if to == "ada":
            self.own.append(data["clock"])
        if to not in ("ada", "desk room-1"):
            self.heard.append((round(self.told.now_s, 6), event, to, wire_json.dumps(data)))


COMING = ("enter_seat", "resume_seat")


def coming_in(late: str) -> list[Act]:
    """The desk, the wall and three players, of whom one may come after the round has opened."""
    host = [("open_desk", {"room": "room-1"}), ("open_door", {})]
    seats = [
        Act(
            at=OPENED + 2.05 if name == late else 1 + number / 10,
            who=name,
            kind="enter_seat",
            fields={"handle": name.title(), "seat_key": f"key of {name}"},
        )
        for number, name in enumerate(("ada", "bo", "cem"))
    ]
    return [
        *(Act(at=0.1, who="host", kind=kind, fields=fields) for kind, fields in host),
        Act(at=0.5, who="wall", kind="watch_wall"),
        *seats,
        *(
            Act(at=2.5, who=who, kind="take_bench", fields={"bench": "Bench 1"})
            for who in ("ada", "bo", "cem")
            if who != late
        ),
        Act(at=OPENED, who="host", kind="open_round", fields={"round": 1}),
        Act(at=SHOWN, who="host", kind="show_result", fields={"round": 1}),
        Act(at=28, who="host", kind="show_record", fields={"round": 1}),
        Act(at=29, who="host", kind="open_round", fields={"round": 2}),
        *(Act(at=tick / 10, who="alarm", kind="") for tick in range(int(OVER * 10) + 1)),
    ]


def answer(who: str, at: float, letter: str) -> Act:
    return Act(
        at=at, who=who, kind="submit_answer", fields={"round": 1, "choice": [letter], "id": f"{who} {at}"}
    )


FACTOR = [Act(at=2, who="host", kind="set_time_factor", fields={"player": "p1", "factor_percent": 200})]
LINK = [
    Act(at=0.2, who="host", kind="make_time_link", fields={"secret": SECRET, "factor_percent": 200}),
    Act(at=2, who="ada", kind="bring_time", fields={"secret": SECRET}),
]
TAKEN = [Act(at=OPENED + 3.3, who="ada", kind="take_time", fields={"round": 1, "time": 1})]
TAKEN_LATE = [
    Act(at=19.7, who="ada", kind="take_time", fields={"round": 1, "time": 1}),
    Act(at=19.9, who="ada", kind="take_time", fields={"round": 1, "time": 2}),
]
ALWAYS = [Act(at=2.2, who="ada", kind="take_time_always", fields={"on": True})]
OFF_AGAIN = [Act(at=26.2, who="ada", kind="take_time_always", fields={"on": False})]
BACK = [Act(at=14.04, who="ada", kind="resume_seat", fields={"seat_key": "key of ada"})]

moments = st.integers(int(OPENED * 20) + 1, int(SHOWN * 20) - 1).map(lambda tick: tick / 20 + 0.013)
letters = st.sampled_from("ABC")


@st.composite
def others_acts(draw: st.DrawFn) -> list[Act]:
    """What the host and the others do during the round: answers, pauses, more time, pages loaded again."""
    acts = [
        answer(draw(st.sampled_from(OTHERS[1:])), draw(moments), draw(letters)) for _ in range(draw(_few))
    ]
    for _ in range(draw(_few)):
        at = draw(moments)
        match draw(st.sampled_from(("pause", "add", "view", "back", "strike", "rename"))):
            case "pause":
                acts.append(Act(at=at, who="host", kind="pause_round", fields={"round": 1}))
                acts.append(Act(at=at + 1.51, who="host", kind="resume_round", fields={"round": 1}))
            case "add":
                acts.append(Act(at=at, who="host", kind="add_time", fields={"seconds": 5, "id": f"{at}"}))
            case "view":
                acts.append(Act(at=at, who=draw(st.sampled_from(OTHERS[:2])), kind="show_view"))
            case "back":
                acts.append(Act(at=at, who="bo", kind="resume_seat", fields={"seat_key": "key of bo"}))
            case "strike":
                acts.append(Act(at=at, who="host", kind="strike_item", fields={"round": 1}))
            case _:
                who = {"player": "p2", "handle": draw(st.sampled_from(("Teal Talus", "O'Dock")))}
                acts.append(Act(at=at, who="host", kind="rename_player", fields=who))
    return acts


_few = st.integers(0, 3)


def played(acts: Iterable[Act], by: Any = HOLDING) -> ListenedHall:
    hall = ListenedHall(acts)
    hall.rooms.handle("room-1", preparation(one_best("i"), one_best("j"), by=by, host="owner"))
    hall.play()
    return hall


@settings(max_examples=30, deadline=None)
@given(
    acts=others_acts(),
    own=st.tuples(moments, moments, letters),
    given_by=st.sampled_from(
        (FACTOR, LINK, [*FACTOR, *BACK], TAKEN, TAKEN_LATE, [*ALWAYS, *BACK, *OFF_AGAIN], [*FACTOR, *TAKEN])
    ),
    late=st.sampled_from(("", "cem")),
    by=st.sampled_from((HOLDING, HOLDING, AT_BENCHES)),
)
def test_nobody_else_can_tell(
    acts: list[Act], own: tuple[float, float, str], given_by: list[Act], late: str, by: Any
) -> None:
    in_own_time, in_time, letter = own
    rest = [*coming_in(late), *acts]
    with_factor = played([*rest, *given_by, answer("ada", in_own_time, letter)], by=by)
    assume("submit_answer done " in with_factor.replies["ada"])
    without = played([*rest, answer("ada", in_time, letter)], by=by)
    assume("submit_answer done " in without.replies["ada"])
    assert with_factor.heard == without.heard


@pytest.mark.parametrize("given_by", [FACTOR, TAKEN, TAKEN_LATE, ALWAYS])
def test_an_answer_in_own_time_is_taken_and_counted_and_was_not_heard(given_by: list[Act]) -> None:
    """Guards the property: what it compares does hold an answer after the deadline."""
    rest = [*coming_in(""), answer("bo", 5, "B")]
    late, in_time, never = (
        played([*rest, *given_by, *more])
        for more in ([answer("ada", 20, "B")], [answer("ada", 5.5, "B")], [])
    )
    assert all("submit_answer done " in hall.replies["ada"] for hall in (late, in_time))
    assert late.heard == in_time.heard
    until_shown = [[one for one in hall.heard if one[0] < SHOWN] for hall in (late, never)]
    assert until_shown[0] == until_shown[1]
    assert late.heard != never.heard
    assert "too_late" in played([*rest, answer("ada", 20, "B")]).replies["ada"][-1]


def test_the_player_is_told_of_the_own_clock_whenever_it_changes() -> None:
    steps = (("pause_round", 4.0), ("resume_round", 6.0), ("add_time", 7.0))
    acts = [
        Act(at=at, who="host", kind=kind, fields={"seconds": 5} if kind == "add_time" else {"round": 1})
        for kind, at in steps
    ]
    told = played([*coming_in(""), *FACTOR, *acts]).own
    opens = after(OPENED)
    assert [(view["paused"], view["left_ms"], view["limit_ms"]) for view in told if view][:4] == [
        (False, None, 20_000),
        (True, 19_000, 20_000),
        (False, None, 20_000),
        (False, None, 30_000),
    ]
    closes = [view["closes_at"] for view in told if view and view["closes_at"]]
    assert closes[:3] == [milliseconds(opens) + ms for ms in (20_000, 22_000, 32_000)]


def test_the_listeners_would_hear_of_it_where_counts_are_told() -> None:
    """The same answers in a review that does not hold results."""
    open_ = replace(HOLDING, holds_results=False)
    heard = [played([*coming_in(""), answer("ada", at, "B")], by=open_).heard for at in (5, 9)]
    assert heard[0] != heard[1]
