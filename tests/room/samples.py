"""Items, plans and rooms made by hand, for tests that need no knowledge base."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import UTC, datetime, timedelta

from quizroom.questions.model import Accepted, DistractorSource, Item, NearTerm, Option, Reason
from quizroom.room.commands import Command, EnterSeat, OpenDoor, OpenRound, PrepareReview, SubmitAnswer
from quizroom.room.events import Event
from quizroom.room.folding import apply, replay
from quizroom.room.laying_out import prepare
from quizroom.room.rules import decide
from quizroom.room.state import Plan, Room
from tests.room.sample_record import record

NOON = datetime(2031, 9, 3, 12, 0, tzinfo=UTC)
NERVES = ("radial nerve", "axillary nerve", "median nerve", "ulnar nerve")
MUSCLES = ("biceps brachii", "triceps brachii", "brachialis", "deltoid", "coracobrachialis")


def after(seconds: float) -> datetime:
    """So many seconds after noon."""
    return NOON + timedelta(seconds=seconds)


def reason(text: str) -> Reason:
    """A reason with a fact and a source of its own."""
    return Reason(text=f"Because: {text}.", facts=(f"fact of {text}",), sources=("common practice",))


def options(texts: Iterable[str], key: str) -> tuple[Option, ...]:
    """Lettered options; those whose letter is in `key` are right."""
    return tuple(
        Option(letter=letter, text=text, concept=text, reason=reason(text), source=_source(letter, key))
        for letter, text in zip("ABCDEFGHIJ", texts, strict=False)
    )


def one_best(item: str = "one-best", key: str = "B") -> Item:
    """Which nerve supplies the deltoid? The key may be moved, right or wrong."""
    return Item(
        id=item,
        family="nerve",
        direction="muscle to nerve",
        format="one_best",
        subject="deltoid",
        stem="Which nerve supplies the deltoid?",
        options=options(NERVES, key),
        key=(key,),
        pick=1,
        accepted=(),
        near=(),
        spelling="half",
        why=reason(f"the key is {key}"),
        facts=("deltoid nerve",),
        muscles=("deltoid",),
        records=(record("Deltoid", nerve="axillary nerve"),),
        seconds=30,
    )


def pick_three(item: str = "pick-three", key: str = "ACE") -> Item:
    """The three muscles of the musculocutaneous nerve, among five."""
    return replace(
        one_best(item),
        family="set",
        format="pick_n",
        stem="Which three muscles does the musculocutaneous nerve supply?",
        options=options(MUSCLES, key),
        key=tuple(key),
        pick=len(key),
        why=reason(f"the keys are {key}"),
    )


def typed(item: str = "typed") -> Item:
    """The nerve of the deltoid, in the player's own words."""
    return replace(
        one_best(item),
        format="typed",
        options=(),
        key=(),
        accepted=(accepted("axillary nerve", "circumflex nerve"),),
        near=tuple(
            NearTerm(concept=nerve, term=nerve, tells=f"The {nerve} is another.")
            for nerve in ("radial nerve", "musculocutaneous nerve")
        ),
    )


def free_list(item: str = "free-list") -> Item:
    """The three muscles of the musculocutaneous nerve, typed."""
    return replace(
        typed(item),
        family="set",
        format="free_list",
        stem="Name the three muscles that the musculocutaneous nerve supplies.",
        pick=3,
        accepted=(
            accepted("biceps brachii", "biceps of the arm"),
            accepted("brachialis", "brachialis anticus"),
            accepted("coracobrachialis"),
        ),
        near=(NearTerm(concept="triceps brachii", term="triceps brachii", tells="It extends the elbow."),),
    )


def accepted(text: str, *synonyms: str) -> Accepted:
    """A concept that counts, by this term or a synonym."""
    return Accepted(concept=text, text=text, terms=(text, *synonyms))


def plan(
    *, timing: str = "computed", standings: bool = False, capacity: int = 500, seconds: int = 45
) -> Plan:
    """A plan of a fictional course."""
    return Plan(
        title="Shoulder and arm",
        course="hhc_kn_232",
        course_title="HHC-KN 232 Muscles and Movement",
        families=("nerve", "set"),
        rounds=4,
        seed=1,
        timing="untimed" if timing == "untimed" else "fixed" if timing == "fixed" else "computed",
        seconds=seconds,
        standings=standings,
        capacity=capacity,
    )


def all_formats() -> tuple[Item, ...]:
    """One item of each format."""
    return one_best(), pick_three(), typed(), free_list()


def prepared(*items: Item, by: Plan | None = None) -> Room:
    """A room as laid out, its door still shut."""
    room = replay(prepare("room-1", preparation(*items, by=by), NOON))
    assert room is not None
    return room


def preparation(*items: Item, by: Plan | None = None, host: str = "owner") -> PrepareReview:
    """The order to lay out a review."""
    return PrepareReview(plan=by or plan(), items=items or all_formats(), host=host)


def gathered(*items: Item, by: Plan | None = None, players: Iterable[str] = ("ada", "bo")) -> Room:
    """A room with its door open and these players in their seats."""
    door = OpenDoor(door_code="CDFHJ")
    return ordered(prepared(*items, by=by), door, *(seat(player) for player in players))


def answering(*items: Item, by: Plan | None = None, players: Iterable[str] = ("ada", "bo")) -> Room:
    """The same with its first round opened at noon."""
    return ordered(gathered(*items, by=by, players=players), OpenRound(round=1))


def seat(player: str, handle: str = "") -> EnterSeat:
    """The order of a player to take a seat."""
    return EnterSeat(player=player, handle=handle or player.title(), key_hash=f"hash of {player}")


def says(player: str, *letters: str, round_: int = 1) -> SubmitAnswer:
    """The order of a player to choose these letters."""
    return SubmitAnswer(player=player, round=round_, choice=letters)


def writes(player: str, *words: str, round_: int = 1) -> SubmitAnswer:
    """The order of a player to hand in these words."""
    return SubmitAnswer(player=player, round=round_, typed=words)


def ordered(room: Room, *commands: Command, at: datetime = NOON) -> Room:
    """The room after these orders, none of which may be refused."""
    for command in commands:
        room = folded(room, decide(room, command, at))
    return room


def folded(room: Room, events: Iterable[Event]) -> Room:
    """The room after these events."""
    for event in events:
        room = apply(room, event)
    return room


def _source(letter: str, key: str) -> DistractorSource:
    return "key" if letter in key else "look_alike"
