"""What the pictures show: reviews played through every phase, with whatever is awkward on a page."""

from collections.abc import Callable, Iterator

from playwright.sync_api import expect

from quizroom.protocol.bench_messages import AnswerForBench, BenchChoice, DrawBenches
from quizroom.protocol.change_messages import FlagItem, RekeyItem
from quizroom.protocol.host_messages import HoldResults
from quizroom.protocol.talk_messages import LetTalk, TalkStep
from quizroom.questions.deck import ALL_FORMATS
from quizroom.rehearsal.line import new_message_id
from tests.browser import scenes_apart
from tests.browser.dealt import review_about, review_of_long_names, review_with
from tests.browser.screens import Device
from tests.browser.seat_screen import answer_letters
from tests.browser.stage import House, Stage

Scene = Callable[[House, Device, int], Iterator[tuple[str, Stage]]]
"""Yields the name of a phase, and who is on the stage, once everybody is in that phase."""

FORTY = "Wallcreeper of the Widest Wing of Wormian"[:40]
FROM_THE_RIGHT = "نقار الخشب عند العظم الزورقي الأيمن"
SAID = "My book gives both the upper and the lower head here."


def play_formats(house: House, me: Device, players: int) -> Iterator[tuple[str, Stage]]:
    """A round of every format, with standings, to the end."""
    stage = house.lay_out(players=players, me=me, handle=FORTY, **review_with(ALL_FORMATS, rounds=6))
    host, rounds = stage.host, 6
    yield "gathering", stage
    for number in range(1, rounds + 1):
        name = f"{number}-{stage.item(number)['format']}"
        _open(stage, number, rounds)
        yield f"answering-{name}", stage
        stage.play_answers(number, right=number % 2 == 0)
        host.step("close_round", number=number)
        if number == 2:
            host.show_standings()
        yield f"closed-{name}", stage
        host.step("show_record", number=number)
        yield f"explained-{name}", stage
    host.step("end_review", number=rounds)
    yield "finished", stage
    stage.leave()


def play_talk(house: House, me: Device, players: int) -> Iterator[tuple[str, Stage]]:
    """A held round of long names that is talked over and answered again."""
    stage = house.lay_out(players=players, me=me, handle=FORTY, **review_of_long_names(rounds=3))
    host = stage.host
    host.say(HoldResults(id=new_message_id(), type="hold_results", on=True))
    _open(stage, 1, 3)
    yield "answering-long", stage
    stage.play_answers(1, right=False)
    yield "answered-long", stage
    host.step("close_round", number=1)
    yield "held", stage
    host.say(LetTalk(id=new_message_id(), type="let_talk", round=1, seconds=120))
    yield "talking", stage
    host.say(TalkStep(id=new_message_id(), type="open_again", round=1))
    expect(stage.me.page.get_by_role("button", name="Hand in")).to_be_visible()
    yield "answering-again", stage
    stage.play_class(1, again=True)
    stage.me.answer(stage.item(1), right=True)
    host.say(TalkStep(id=new_message_id(), type="close_again", round=1))
    yield "held-again", stage
    host.step("show_result", number=1)
    yield "result-twice", stage
    host.step("show_record", number=1)
    yield "explained-twice", stage
    host.step("end_review", number=1)
    stage.leave()


def play_benches(house: House, me: Device, players: int) -> Iterator[tuple[str, Stage]]:
    """Drawn benches, each with one answer after its members' own."""
    benches = BenchChoice(how="drawn", size=4)
    stage = house.lay_out(players=players, me=me, benches=benches, **review_about("brachialis", rounds=2))
    host = stage.host
    host.show_standings()
    host.say(DrawBenches(id=new_message_id(), type="draw_benches"))
    yield "gathering-benches", stage
    _open(stage, 1, 2)
    yield "answering-benches", stage
    stage.play_class(1)
    item = stage.item(1)
    stage.me.choose(item, right=False)
    stage.me.hand_in()
    stage.me.shows("Talk, then one of you hands in for all.")
    yield "bench-talks", stage
    for place, seat in enumerate(stage.seats[:-2]):
        choice = tuple(answer_letters(item, right=place % 3 > 0))
        seat.say(AnswerForBench(id=new_message_id(), type="answer_for_bench", round=1, choice=choice))
    host.step("close_round", number=1)
    yield "closed-benches", stage
    host.step("end_review", number=1)
    yield "finished-benches", stage
    stage.leave()


def play_changes(house: House, me: Device, players: int) -> Iterator[tuple[str, Stage]]:
    """Certainty, flags, another key, a struck item; the seat's handle runs from right to left."""
    plan = review_about("brachialis", rounds=2)
    stage = house.lay_out(players=players, me=me, handle=FROM_THE_RIGHT, certainty=True, **plan)
    host = stage.host
    host.show_standings()
    yield "gathering-right-to-left", stage
    _open(stage, 1, 2)
    item = stage.item(1)
    stage.play_class(1, certain=True)
    stage.me.choose(item, right=False)
    stage.me.page.get_by_role("radio", name="3 right").check()
    yield "answering-certainty", stage
    stage.me.hand_in()
    for seat in stage.seats[:3]:
        seat.say(FlagItem(id=new_message_id(), type="flag_item", round=1, text=SAID))
    host.step("close_round", number=1)
    yield "closed-certainty-flagged", stage
    both = (*answer_letters(item, right=True), *answer_letters(item, right=False))
    host.say(RekeyItem(id=new_message_id(), type="rekey_item", round=1, key=both, reason="Books differ."))
    yield "closed-rekeyed", stage
    host.step("show_record", number=1)
    yield "explained-rekeyed", stage
    _open(stage, 2, 2)
    stage.play_class(2, certain=True)
    host.step("close_round", number=2)
    host.strike(2)
    host.look()
    yield "closed-struck", stage
    host.step("end_review", number=2)
    yield "finished-certainty", stage
    stage.leave()


def _open(stage: Stage, number: int, rounds: int) -> None:
    stage.host.step("open_round", number=number)
    stage.me.sees_round(number, rounds)


SCENES: dict[str, Scene] = {
    "formats": play_formats,
    "talk": play_talk,
    "benches": play_benches,
    "changes": play_changes,
    "stations": scenes_apart.play_stations,
    "own-time": scenes_apart.play_own_time,
}
