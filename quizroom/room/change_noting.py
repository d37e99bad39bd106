"""Which events are changes of what answers are worth."""

from quizroom.questions.rekeying import key_words
from quizroom.room.bench_events import BenchesDrawn, BenchRenamed, BenchTaken
from quizroom.room.change_events import ItemRekeyed, KeyRestored
from quizroom.room.changes import Change, ChangeKind
from quizroom.room.events import Event, ItemRestored, ItemStruck, PlayerRemoved, WordsRuled
from quizroom.room.state import Room


def changes_of(room: Room, number: int | None = None) -> tuple[Change, ...]:
    """All changes that hosts made in a review, or those of one round, in order."""
    return tuple(one for one in room.changes if number is None or one.round == number)


def change_of(room: Room, event: Event) -> Change | None:
    """The change that an event is, given the room after it; None for all others.

    Where players sit and who is sent out counts only if a host decided it: players choose benches themselves.
    """
    match event:
        case ItemStruck() | ItemRestored():
            kind: ChangeKind = "struck" if isinstance(event, ItemStruck) else "restored"
            return Change(round=event.round, kind=kind, by=event.by, at=event.at)
        case ItemRekeyed() | KeyRestored():
            return _of_key(room, event)
        case WordsRuled():
            kind = "words_accepted" if event.accept else "words_refused"
            return Change(round=event.round, kind=kind, what=event.words, by=event.by, at=event.at)
        case BenchTaken() if event.by:
            return Change(round=0, kind="seated", what=event.bench, by=event.by, at=event.at)
        case BenchRenamed() if event.by:
            what = f"{event.bench} → {event.name}"
            return Change(round=0, kind="bench_renamed", what=what, by=event.by, at=event.at)
        case BenchesDrawn() if event.by:
            return Change(round=0, kind="drawn", by=event.by, at=event.at)
        case PlayerRemoved() if event.by:
            return Change(round=0, kind="sent_out", by=event.by, at=event.at)
        case _:
            return None


def _of_key(room: Room, event: ItemRekeyed | KeyRestored) -> Change:
    what = key_words(room.rounds[event.round - 1].item)
    if isinstance(event, KeyRestored):
        return Change(round=event.round, kind="key_restored", what=what, by=event.by, at=event.at)
    return Change(round=event.round, kind="rekeyed", what=what, reason=event.reason, by=event.by, at=event.at)
