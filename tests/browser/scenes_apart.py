"""Scenes in which not everybody is at the same place: stations, and more time for one, in CJK."""

from collections.abc import Iterator

from playwright.sync_api import expect

from quizroom.protocol.bench_messages import BenchChoice, TakeBench
from quizroom.protocol.host_messages import HoldResults, RoundStep
from quizroom.protocol.time_messages import SetTimeFactor
from quizroom.rehearsal.line import new_message_id
from tests.browser.dealt import review_of_long_names, review_with
from tests.browser.screens import Device
from tests.browser.stage import House, Stage

CJK = "冠羽の長い鷺と右の有鉤骨 긴 볏을 가진 왜가리와 오른쪽 갈고리뼈"[:40]
BENCHES = ("Carpals", "Tarsals", "Left metatarsal bones", "ضلوع القفص الصدري", "肋骨の机", "Ribs")
STATIONS = 4


def play_stations(house: House, me: Device, players: int) -> Iterator[tuple[str, Stage]]:
    """Benches begin at different items and move on at the bell."""
    benches = BenchChoice(how="choice", answers=False, stations=True)
    plan = review_with(("one_best",), rounds=STATIONS)
    stage = house.lay_out(players=players, me=me, handle=CJK, benches=benches, **plan)
    host = stage.host
    host.show_standings()
    yield "gathering-bench-choice", stage
    stage.me.page.get_by_label("Name of a bench").fill(BENCHES[0])
    stage.me.page.get_by_role("button", name="Take it").click()
    stage.me.shows(f"Your bench: {BENCHES[0]}")
    for place, seat in enumerate(stage.seats):
        bench = BENCHES[place % len(BENCHES)]
        seat.say(TakeBench(id=new_message_id(), type="take_bench", bench=bench))
    yield "gathering-bench-taken", stage
    host.say(RoundStep(id=new_message_id(), type="open_stations", round=1))
    stage.me.answer(stage.item(1), right=True)
    yield "at-station", stage
    for turn in range(1, STATIONS + 1):
        host.say(RoundStep(id=new_message_id(), type="ring_bell", round=turn))
    stage.me.shows("All stations are done")
    yield "stations-done", stage
    host.say(RoundStep(id=new_message_id(), type="open_round", round=1))
    yield "station-shown", stage
    host.step("end_review", number=1)
    stage.leave()


def play_own_time(house: House, me: Device, players: int) -> Iterator[tuple[str, Stage]]:
    """One player has twice the time, and goes on while the others wait for the result."""
    plan = review_of_long_names(rounds=2)
    stage = house.lay_out(players=players, me=me, handle=CJK, seconds=120, **plan)
    host = stage.host
    mine = next(one["player"] for one in host.desk["roster"] if one["handle"] == CJK)
    host.say(HoldResults(id=new_message_id(), type="hold_results", on=True))
    host.say(SetTimeFactor(id=new_message_id(), type="set_time_factor", player=mine, factor_percent=200))
    yield "gathering-own-time", stage
    host.step("open_round", number=1)
    stage.me.sees_round(1, 2)
    stage.play_class(1)
    host.step("close_round", number=1)
    expect(stage.me.page.get_by_text("Closed for the others.")).to_be_visible()
    yield "closed-for-others", stage
    stage.me.answer(stage.item(1), right=False)
    yield "answered-own-time", stage
    host.step("end_review", number=1)
    stage.leave()
