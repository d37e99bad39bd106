"""Every response of a review, one after the other, for the host's files alone."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import timedelta
from typing import Literal

from quizroom.knowledge.terms import normalise
from quizroom.marking import RoomMarks, RoundMarks
from quizroom.questions.model import Item
from quizroom.room.state import Answer, Certainty, Player, Room, Round
from quizroom.views.results import key_text

KeyVariant = Literal["as dealt", "keyed anew", "struck", "words ruled"]
"""By which key a response is marked: as dealt, the host's, none, or the host's ruling on those words."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Response:
    """A response as received, and what it is worth by now. `player` is the seat's id within the room.

    `options` are as shown, `answer` is what was chosen or written, `key` what was right. `right` is None, and
    `mark` too, where nothing counts. `t_ms` is from when such answers began to be taken, pauses
    included.
    """

    round: int
    player: str
    item: str
    facts: tuple[str, ...]
    direction: str
    stem: str
    options: tuple[str, ...]
    answer: tuple[str, ...]
    key: tuple[str, ...]
    right: bool | None
    mark: float | None
    certainty: Certainty | None
    t_ms: int
    attempt: Literal[1, 2]
    phase: Literal["answering", "answering again"]
    key_variant: KeyVariant
    time_factor: float
    """How much longer than the rest the player might answer, as last given: 1, 1.5 or 2."""
    took_time: bool
    """Whether they took more time by themselves for this answer, or in every round by then."""


def responses(room: Room, marks: RoomMarks) -> Iterator[Response]:
    """The responses of all closed rounds, by round and then in the order in which players came in.

    What was answered again after talking follows as a second attempt; no marks count it.
    """
    for current, first, second in zip(room.rounds, marks.rounds, marks.seconds, strict=True):
        if current.closed_at is None:
            continue
        for player in room.players.values():
            if player.id in current.answers:
                yield _response(current, first, player, attempt=1)
            if second is not None and player.id in current.second_answers:
                yield _response(current, second, player, attempt=2)


def _response(current: Round, marked: RoundMarks, seated: Player, *, attempt: Literal[1, 2]) -> Response:
    item, again, player = current.item, attempt == 2, seated.id
    answer = (current.second_answers if again else current.answers)[player]
    began = current.again_at if again and current.again_at is not None else current.opened_at
    mark = None if current.struck else marked.marks[player]
    return Response(
        round=current.number,
        player=player,
        item=item.id,
        facts=item.facts,
        direction=item.direction,
        stem=" | ".join((item.stem, *(stem.text for stem in item.stems))),
        options=tuple(f"{option.letter}: {option.text}" for option in item.options),
        answer=answer.typed or _chosen(item, answer),
        key=item.key or key_text(item),
        right=None if mark is None else mark == 1,
        mark=mark,
        certainty=answer.certainty,
        t_ms=(answer.at - began) // timedelta(milliseconds=1),
        attempt=attempt,
        phase="answering again" if again else "answering",
        key_variant=_variant(current, marked, answer),
        time_factor=seated.factor_percent / 100,
        took_time=_took_time(current, seated, answer, again=again),
    )


def _took_time(current: Round, player: Player, answer: Answer, *, again: bool) -> bool:
    taken = current.times_taken_again if again else current.times_taken
    always = player.always_since is not None and player.always_since <= answer.at
    return always or taken.get(player.id, 0) > 0


def _chosen(item: Item, answer: Answer) -> tuple[str, ...]:
    """The letters; of a matching "-" for a row that was left open."""
    return tuple(letter or "-" for letter in answer.choice) if item.stems else answer.choice


def _variant(current: Round, marked: RoundMarks, answer: Answer) -> KeyVariant:
    if current.struck:
        return "struck"
    ruled = any(normalise(text) in marked.rulings for text in answer.typed)
    if ruled:
        return "words ruled"
    return "as dealt" if current.dealt is None else "keyed anew"
