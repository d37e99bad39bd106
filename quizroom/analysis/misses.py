"""What one player missed in a review, by the marks as they stand now: strikes and rulings count."""

from collections.abc import Iterator
from dataclasses import dataclass

from quizroom.marking import RoomMarks, marks_of_room, rows_right
from quizroom.questions.model import Item
from quizroom.questions.waiting import told_before
from quizroom.room.answers import IN_PLACES
from quizroom.room.rekeying import keeps_dealt_key
from quizroom.room.state import Answer, Certainty, Player, Room, Round

_UNASKED = 2
"""Where certainty was not asked for, an answer stands with those of middling certainty."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Played:
    """One round as a player went through it; no `answer` and no mark if there was none."""

    current: Round
    answer: Answer | None
    mark: float | None
    certainty: Certainty | None


def played_rounds(room: Room, seat: str, marks: RoomMarks | None = None) -> tuple[Played, ...]:
    """The rounds that count for a seat and whose record may be known, in order.

    Not the open round, nor one whose record is yet to be shown; not struck items, nor what was before the
    player came; nor items whose dealt key the host took away, since facts are asked again
    as they were dealt. Empty for a seat that is not there.
    """
    player = room.players.get(seat)
    if player is None:
        return ()
    known = marks or marks_of_room(room)
    return tuple(_played(room, player, known))


def misses(rounds: tuple[Played, ...]) -> tuple[Played, ...]:
    """Those without the full mark: what was certain and wrong first, what was not answered last.

    Where nobody was asked how certain they were, a look-alike taken for the right one comes first: who mixes
    two terms up has no doubt.
    """
    missed = [one for one in rounds if one.mark is None or one.mark < 1.0]
    return tuple(sorted(missed, key=_order))


def _played(room: Room, player: Player, marks: RoomMarks) -> Iterator[Played]:
    for current, marked in zip(room.rounds, marks.rounds, strict=True):
        counted = not current.struck and keeps_dealt_key(current) and current.number >= player.from_round
        if counted and may_be_told(room, current):
            answer = current.answers.get(player.id)
            yield Played(
                current=current,
                answer=answer,
                mark=marked.marks.get(player.id),
                certainty=None if answer is None else answer.certainty,
            )


def may_be_told(room: Room, current: Round) -> bool:
    """Whether a round's key and reasons, and its records, are no secret any more.

    A round of which something waits for a later one is told in full after that.
    """
    if room.phase == "finished":
        return current.closed_at is not None
    return current.explained_at is not None and told_before(current.item, room.ahead) is current.item


def mistook_look_alike(item: Item, answer: Answer) -> bool:
    """Whether the answer was a look-alike of what was asked for."""
    wrong = {letter for letter in answer.choice if letter not in item.key}
    if item.format in IN_PLACES:
        right = rows_right(item, answer)
        wrong = {letter for letter, fits in zip(answer.choice, right, strict=True) if not fits}
    return any(option.letter in wrong and option.source == "look_alike" for option in item.options)


def _order(one: Played) -> tuple[bool, bool, int, bool, int]:
    answered = one.answer is not None
    alike = one.answer is not None and mistook_look_alike(one.current.item, one.answer)
    return (
        not answered,
        bool(one.mark),
        -(one.certainty or _UNASKED),
        not alike,
        one.current.number,
    )
