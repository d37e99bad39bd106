"""A player who went through a review and is now alone with what was missed."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from quizroom.questions.model import Item
from quizroom.room.adding import AddItem
from quizroom.room.commands import CloseRound, EndReview, EnterSeat, OpenRound, ShowRecord, SubmitAnswer
from quizroom.room.state import Plan, Room
from quizroom.second_look.asked import AskedLook, GivenAnswer
from quizroom.service.look_ports import LookStore
from quizroom.service.practice import Practice
from quizroom.service.seat_history import SeatHistories
from quizroom.service.second_look import SecondLooks
from quizroom.storage.look_memory import MemoryLookStore
from tests.service.courses import knowledge
from tests.service.dealing import reviews
from tests.service.fakes import Desk

PLAYER = "a" * 64
THINKING_S = 12.0
Said = tuple[tuple[str, ...], tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class OneSeat:
    """A seat of the player's history."""

    room: str
    player: str = "ada"


class Seats:
    """Whose seats they are; a player who is not named has none."""

    def __init__(self) -> None:
        """Begin with none."""
        self.of_player: dict[str, list[OneSeat]] = {}

    def seats_of(self, player: str) -> Sequence[OneSeat]:
        """The seats of a player."""
        return self.of_player.get(player, [])


class Alone:
    """The services over stores in memory, and reviews that are played on the spot."""

    def __init__(self, store: LookStore | None = None) -> None:
        """Begin with a player who has had no seat yet."""
        self.desk = Desk()
        self.clock = self.desk.clock
        self.seats = Seats()
        self.store = store or MemoryLookStore()
        ids = iter(range(1000))
        self.second_looks = SecondLooks(
            catalogue=knowledge(),
            players=self.seats,
            histories=SeatHistories(rooms=self.desk.rooms, log=self.desk.log),
            store=self.store,
            clock=self.clock,
        )
        self.practice = Practice(
            catalogue=knowledge(), store=self.store, clock=self.clock, new_id=lambda: f"id-{next(ids)}"
        )

    def review(
        self,
        plan: Plan,
        wrong: Iterable[int],
        *,
        own: Iterable[Item] = (),
        shown: bool = True,
        ended: bool = True,
    ) -> Room:
        """Play a review in which the player is wrong in these rounds; the seat joins their history.

        Items of the host's `own` are put in front of the dealt ones, the last one first.
        """
        missed = set(wrong)
        service = reviews(self.desk)
        room = service.prepare(plan, host="owner", order=f"order-{plan.seed}")
        for item in own:
            room = self.desk.rooms.handle(room.id, AddItem(position=0, item=item))
        room = service.open_door(room)
        self.desk.rooms.handle(room.id, EnterSeat(player="ada", handle="Ada", key_hash="0" * 64))
        self.seats.of_player.setdefault(PLAYER, []).append(OneSeat(room.id))
        for number in range(1, len(room.ahead) + 1):
            room = self.desk.rooms.handle(room.id, OpenRound(round=number))
            self.clock.move(THINKING_S)
            choice, typed = said(room.rounds[-1].item, right=number not in missed)
            answer = SubmitAnswer(player="ada", round=number, choice=choice, typed=typed)
            self.desk.rooms.handle(room.id, answer)
            self.desk.rooms.handle(room.id, CloseRound(round=number, by_host=True))
            if shown:
                self.desk.rooms.handle(room.id, ShowRecord(round=number))
        return self.desk.rooms.handle(room.id, EndReview()) if ended else self.desk.rooms.room(room.id)

    def answer_to(self, look: AskedLook, *, right: bool, took_ms: int = 9000) -> GivenAnswer:
        """The player's answer to a look, given now."""
        choice, typed = said(look.item, right=right)
        return GivenAnswer(
            look=look.id,
            choice=choice,
            typed=typed,
            certainty=None,
            took_ms=took_ms,
            answered_at=self.clock.now(),
            received_at=self.clock.now(),
        )

    def days_later(self, days: int) -> None:
        """Let days pass."""
        self.clock.move(days * 24 * 3600.0)


def said(item: Item, *, right: bool) -> Said:
    """Letters and words of a right answer, or of one that is wrong altogether."""
    match item.format:
        case "typed" | "free_list":
            return (), tuple(one.text for one in item.accepted)[: item.pick] if right else ("nothing known",)
        case "ordering":
            return (item.key if right else tuple(reversed(item.key))), ()
        case "matching":
            return (item.key if right else (*item.key[1:], item.key[0])), ()
        case _:
            wrong = tuple(option.letter for option in item.options if option.letter not in item.key)
            return (item.key if right else wrong[: item.pick]), ()
