"""How the orders of a random review are worded, given the room as it then is and two numbers."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType

from quizroom.questions.model import Item
from quizroom.room.adding import AddItem
from quizroom.room.change_commands import FlagItem, RekeyItem, SettleFlags, UnflagItem
from quizroom.room.commands import (
    AddTime,
    CloseRound,
    Command,
    DropItem,
    EndReview,
    GiveBackTime,
    HoldResults,
    OpenDoor,
    OpenRound,
    PauseRound,
    RemovePlayer,
    RenamePlayer,
    RestoreItem,
    ResumeRound,
    RuleOnWords,
    ShowRecord,
    ShowResult,
    ShowStandings,
    StrikeItem,
    SubmitAnswer,
    SwapItem,
)
from quizroom.room.own_time import times_taken
from quizroom.room.state import Room
from quizroom.room.talk_commands import AddTwin, CloseAgain, LetTalk, OpenAgain
from quizroom.room.time_commands import BringTime, MakeTimeLink, SetTimeFactor, TakeTime, TakeTimeAlways
from quizroom.room.time_state import FACTORS
from tests.room.sample_items import one_best
from tests.room.samples import seat

Wording = Callable[[Room, int, int, int], Command | None]
"""From the room, two numbers, and how far the number of the round is from the one meant."""

PLAYERS = ("ada", "bo", "cem", "dele", "esme")
HANDLES = ("Teal Talus", "teal talus", "O'Dock", "Müller-Elder", "  ", "x" * 60, "橈骨", "עצם")
WORDS = ("axillary nerve", "axilary nerve", "radial nerve", "brachialis", "biceps brachii", "rude", "")


def _answer(room: Room, who: int, what: int, shift: int) -> SubmitAnswer:
    player = list(room.players)[who % len(room.players)] if room.players and who < 6 else "nobody"
    number = len(room.rounds) + shift
    words = tuple(WORDS[(what + 2 * step) % len(WORDS)] for step in range(what % 4))
    letters = tuple(letter for place, letter in enumerate("ABCDEF") if what >> place & 1)
    if who == 7:  # at times the wrong sort of answer, or too much of it
        return SubmitAnswer(player=player, round=number, choice=letters, typed=words)
    item = room.rounds[-1].item if room.rounds else one_best()
    if item.format in ("ordering", "matching"):
        return SubmitAnswer(player=player, round=number, choice=_places(item, what))
    if item.options:
        return SubmitAnswer(player=player, round=number, choice=letters[: item.pick])
    return SubmitAnswer(player=player, round=number, typed=words[: item.pick])


def _places(item: Item, what: int) -> tuple[str, ...]:
    """All letters in some order; rows may be left open."""
    letters = [option.letter for option in item.options]
    turned = [*letters[what % 4 :], *letters[: what % 4]]
    is_open = item.format == "matching" and what > 40
    return tuple("" if is_open and place == 1 else letter for place, letter in enumerate(turned))[: item.pick]


def _enter(room: Room, who: int, name: int, _: int) -> Command:
    return seat(PLAYERS[who % len(PLAYERS)], HANDLES[name] if 0 < name < len(HANDLES) else "")


def _rename(room: Room, who: int, name: int, _: int) -> Command:
    return RenamePlayer(player=PLAYERS[who % len(PLAYERS)], handle=HANDLES[name % len(HANDLES)])


def _swap(room: Room, place: int, _: int, __: int) -> Command:
    fresh = replace(one_best(f"fresh-{room.version}"), stem="Which nerve supplies the teres minor?")
    return SwapItem(position=place % 3, instead_of=_ahead(room, place % 3), item=fresh)


def _add(room: Room, place: int, _: int, __: int) -> Command:
    return AddItem(position=place % 5, item=replace(one_best(f"own-{place % 4}"), by_host=True))


def _drop(room: Room, place: int, of: int, _: int) -> Command | None:
    # Seldom, and mostly the item that is there, so that items last for some rounds.
    return DropItem(position=place % 3, item=_ahead(room, of % 3)) if place < 3 else None


def _ahead(room: Room, position: int) -> str:
    return room.ahead[position].id if position < len(room.ahead) else "gone"


def _remove(_: Room, who: int, seldom: int, __: int) -> Command | None:
    return RemovePlayer(player=PLAYERS[who % len(PLAYERS)]) if seldom % 4 == 0 else None


def rekey_order(room: Room, one: int, other: int, shift: int) -> Command:
    """Mostly a key that fits, at times the dealt one, one too short, or none."""
    item = room.rounds[-1].item if room.rounds else one_best()
    letters = [option.letter for option in item.options]
    turned = [*letters[other % 4 :], *letters[: other % 4]]
    wide = 0 if one > 5 else item.pick + (one % 2 if item.format in ("one_best", "pick_n") else 0)
    terms = () if letters else tuple(WORDS[(other + step) % len(WORDS)] for step in range(wide))
    reason = ("", "My book says so.")[other % 2]
    number = len(room.rounds) + shift
    return RekeyItem(round=number, key=tuple(turned[:wide]), terms=terms, reason=reason, by="M. Sorrel")


def _flag(room: Room, who: int, what: int, shift: int) -> Command:
    player, number = PLAYERS[who % len(PLAYERS)], len(room.rounds) + shift
    if what % 4 == 3:
        return UnflagItem(player=player, round=number)
    return FlagItem(player=player, round=number, text=("", "Ada says it is B.", "x" * 201)[what % 3])


def _take_time(room: Room, who: int, what: int, shift: int) -> Command:
    """Mostly the next time for what is asked now; at times one that was taken before, or one too many."""
    player, number = PLAYERS[who % len(PLAYERS)], max(1, len(room.rounds) + shift)
    known = room.rounds[-1] if room.rounds else None
    again = known is not None and known.again_at is not None and what != 7
    time = (0 if known is None else times_taken(known, player)) + (1, 1, 1, 2)[what % 4]
    return TakeTime(player=player, round=number, time=max(1, time - (what == 4)), again=again)


def _settle(room: Room, one: int, _: int, shift: int) -> Command:
    return SettleFlags(round=len(room.rounds) + shift, settled=one % 3 > 0, by="M. Sorrel")


def _end(_: Room, one: int, __: int, ___: int) -> Command | None:
    return EndReview(ends_own_time=True) if one == 0 else None


WORDING: Mapping[str, Wording] = MappingProxyType(
    {
        "add_time": lambda _, one, other, __: AddTime(
            seconds=(15, 15, 600, 7200, 0, -1)[one % 6], order="pqrst"[other % 5]
        ),
        "add": _add,
        "answer": _answer,
        "answer_again": lambda room, who, what, shift: replace(_answer(room, who, what, shift), again=True),
        "close_again": lambda room, one, _, shift: CloseAgain(
            round=len(room.rounds) + shift, by_host=one > 2
        ),
        "close_round": lambda room, one, _, shift: CloseRound(
            round=len(room.rounds) + shift, by_host=one > 2
        ),
        "drop": _drop,
        "end": _end,
        "enter": _enter,
        "flag": _flag,
        "factor": lambda _, one, other, __: SetTimeFactor(
            player=PLAYERS[one % len(PLAYERS)], factor_percent=FACTORS[other % 3]
        ),
        "give_back": lambda _, one, __, ___: GiveBackTime(ms=(-5, 0, 1, 2500, 60_000)[one % 5]),
        "hold": lambda _, one, __, ___: HoldResults(on=one % 3 > 0),
        "let_talk": lambda room, one, other, shift: LetTalk(
            round=len(room.rounds) + shift,
            seconds=(5, 600, 601, 60, 120, 0)[one % 6],
            ends_own_time=other % 4 > 0,
        ),
        "open_again": lambda room, one, _, shift: OpenAgain(round=len(room.rounds) + shift, by_host=one > 1),
        "open_door": lambda _, __, ___, ____: OpenDoor(door_code="CDFHJ"),
        "open_round": lambda room, one, _, shift: OpenRound(
            round=len(room.rounds) + 1 + shift, ends_own_time=one % 4 > 0
        ),
        "pause": lambda room, _, __, shift: PauseRound(round=len(room.rounds) + shift),
        "rekey": rekey_order,
        "remove": _remove,
        "rename": _rename,
        "restore": lambda room, _, __, shift: RestoreItem(round=len(room.rounds) + shift),
        "rule": lambda room, one, other, shift: RuleOnWords(
            round=len(room.rounds) + shift, words=WORDS[one % len(WORDS)], accept=other % 2 == 0
        ),
        "resume": lambda room, _, __, shift: ResumeRound(round=len(room.rounds) + shift),
        "settle": _settle,
        "show_record": lambda room, one, _, shift: ShowRecord(
            round=len(room.rounds) + shift, ends_own_time=one % 4 > 0
        ),
        "show_result": lambda room, one, _, shift: ShowResult(
            round=len(room.rounds) + shift, ends_own_time=one % 4 > 0
        ),
        "standings": lambda _, one, __, ___: ShowStandings(on=one % 2 == 0),
        "strike": lambda room, _, __, shift: StrikeItem(round=len(room.rounds) + shift),
        "swap": _swap,
        "twin": lambda room, _, __, shift: AddTwin(
            round=len(room.rounds) + shift, item=one_best(f"twin-{len(room.rounds)}")
        ),
        "time_link": lambda _, one, other, __: MakeTimeLink(
            link=f"link {one % 2}", factor_percent=FACTORS[other % 3]
        ),
        "bring_time": lambda _, one, other, __: BringTime(
            player=PLAYERS[one % len(PLAYERS)], link=f"link {other % 3}"
        ),
        "take_time": _take_time,
        "take_time_always": lambda _, one, other, __: TakeTimeAlways(
            player=PLAYERS[one % len(PLAYERS)], on=other % 3 > 0
        ),
        "wait": lambda _, __, ___, ____: None,
    }
)
