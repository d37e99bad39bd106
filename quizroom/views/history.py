"""What a player has answered in a review: for their own eyes, to be taken away."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime

from quizroom.marking import RoomMarks, RoundMarks, marks_of_room
from quizroom.questions.model import Family, Format, Item
from quizroom.room.state import Answer, Player, Room, Round
from quizroom.views.changes import own_flag
from quizroom.views.own import verdict_of
from quizroom.views.own_model import Verdict
from quizroom.views.results import key_text


@dataclass(frozen=True, slots=True, kw_only=True)
class PastRound:
    """A round as its player lived it, marked as it now stands; no key before it is told."""

    round: int
    family: Family
    format: Format
    stem: str
    stems: tuple[str, ...]
    options: tuple[str, ...]
    answer: tuple[str, ...]
    """In words; of a matching one for each row, "" where none was chosen. Empty: no answer."""
    key: tuple[str, ...]
    second: tuple[str, ...]
    """What was answered after talking, likewise; it counts for no marks."""
    verdict: Verdict | None
    """None as long as the round is open or its result held."""
    mark: float | None
    """0 to 1; None where the round does not count for this player or nothing was answered."""
    opened_at: datetime
    answered_at: datetime | None
    second_verdict: Verdict | None = None
    """How the second answer stands; None for none."""
    flagged: bool = False
    """Whether the player's flag is up at this item, and in `flag_words` what the player wrote with it."""
    flag_words: str = ""
    took_time: int = 0
    """How often the player took more time by themselves, for both answers together."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PastReview:
    """A review as one player lived it."""

    room: str
    title: str
    course: str
    handle: str
    began_at: datetime | None
    finished_at: datetime | None
    marks: float
    of: int
    time_factor: float
    """How much longer the player might answer: 1, 1.5 or 2; for their own eyes alone."""
    always_took_time: bool
    """Whether they took more time in every round by themselves, as last chosen."""
    rounds: tuple[PastRound, ...]
    """Those whose result is told."""
    untold: tuple[PastRound, ...] = ()
    """Those that are open or held, where the player answered, flagged, or took more time."""
    for_credit: bool = False
    entry: str = ""
    """The opaque id by which the seat is on the class roster; empty if it is on none."""
    institutional_id: str = ""
    """What that roster has as this player's id. Name and section are the host's to give out."""


def past_review(room: Room, seat: str) -> PastReview | None:
    """The review as whoever sat in this seat lived it; None for one who was sent out.

    Of rounds that are still open or whose result is held it has what the player left there, and no key.
    """
    player = room.players.get(seat)
    if player is None:
        return None
    marks = marks_of_room(room)
    return PastReview(
        room=room.id,
        title=room.plan.title,
        course=room.plan.course_title,
        handle=player.handle,
        began_at=room.rounds[0].opened_at if room.rounds else room.prepared_at,
        finished_at=room.finished_at,
        marks=marks.totals[seat].marks,
        of=marks.totals[seat].of,
        time_factor=player.factor_percent / 100,
        always_took_time=player.always_since is not None,
        rounds=tuple(_rounds(room, player, marks)),
        untold=tuple(_untold(room, player)),
        for_credit=bool(room.plan.roster),
        entry=room.claims.get(seat, ""),
    )


def _rounds(room: Room, player: Player, marks: RoomMarks) -> Iterator[PastRound]:
    for current, marked, again in zip(room.rounds, marks.rounds, marks.seconds, strict=True):
        if current.shown_at is not None:
            yield _past_round(current, player, marked, again)


def _untold(room: Room, player: Player) -> Iterator[PastRound]:
    for current in room.rounds:
        if current.shown_at is None:
            left = _left_behind(current, player)
            if left.answered_at is not None or left.second or left.flagged or left.took_time:
                yield left


def _past_round(current: Round, player: Player, marked: RoundMarks, again: RoundMarks | None) -> PastRound:
    mark = marked.marks.get(player.id)
    verdict = verdict_of(player, current, mark)
    return replace(
        _left_behind(current, player),
        key=key_text(current.item),
        verdict=verdict,
        mark=mark if verdict in ("right", "part", "wrong") else None,
        second_verdict=_second_verdict(current, player, again),
    )


def _second_verdict(current: Round, player: Player, again: RoundMarks | None) -> Verdict | None:
    if again is None or player.id not in current.second_answers:
        return None
    return verdict_of(player, current, again.marks.get(player.id))


def _left_behind(current: Round, player: Player) -> PastRound:
    """What the player was asked and left there, without anything that depends on the key."""
    second = current.second_answers.get(player.id)
    flag = own_flag(player, current)
    answer = current.answers.get(player.id)
    return PastRound(
        round=current.number,
        family=current.item.family,
        format=current.item.format,
        stem=current.item.stem,
        stems=tuple(stem.text for stem in current.item.stems),
        options=tuple(option.text for option in current.item.options),
        answer=() if answer is None else _words(current.item, answer),
        key=(),
        second=() if second is None else _words(current.item, second),
        verdict=None,
        mark=None,
        opened_at=current.opened_at,
        answered_at=None if answer is None else answer.at,
        flagged=flag is not None,
        flag_words="" if flag is None else flag.text,
        took_time=current.times_taken.get(player.id, 0) + current.times_taken_again.get(player.id, 0),
    )


def _words(item: Item, answer: Answer) -> tuple[str, ...]:
    texts = {option.letter: option.text for option in item.options}
    return answer.typed or tuple(texts.get(letter, "") for letter in answer.choice)
