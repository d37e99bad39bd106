"""Rooms that differ only in what nobody may know before a round is closed."""

from collections.abc import Iterable
from dataclasses import replace

import orjson

from quizroom.marking import marks_of_room
from quizroom.protocol.codec import write
from quizroom.questions.model import DistractorSource, Item, NearTerm, Option
from quizroom.realtime.broadcast import tally_of
from quizroom.room.state import Answer, Room, Round
from quizroom.views.own import own_view
from quizroom.views.public import public_view
from tests.room.sample_items import accepted, pick_three, reason
from tests.room.sample_record import record
from tests.room.samples import after

NOW = after(5000)


def told_to_all(room: Room) -> bytes:
    """Every byte that a seat or the wall may get to see of a room, whoever it is."""
    marks = marks_of_room(room)
    tally = tally_of(room)
    owns = [write(own_view(room, player, marks, NOW)) for player in (*room.players, "nobody")]
    return orjson.dumps([write(public_view(room, marks, NOW)), write(tally), owns])


def told_to_wall(room: Room) -> bytes:
    """The public view alone."""
    return orjson.dumps(write(public_view(room, marks_of_room(room), NOW)))


def told_to_player(room: Room, player: str) -> bytes:
    """One player's own view."""
    return orjson.dumps(write(own_view(room, player, marks_of_room(room), NOW)))


def with_other_key(room: Room, shift: int) -> Room:
    """The same room, but other keys where the result is not known yet, and other items ahead.

    Whose twin an item is, is no secret of its key: it stays.
    """
    ahead = tuple(
        replace(pick_three(item.id if item.id in room.twins else f"other-{index}"), seconds=90)
        for index, item in enumerate(room.ahead)
    )
    rounds = tuple(
        one if one.shown_at is not None else replace(one, item=other_key(one.item, shift))
        for one in room.rounds
    )
    now = {one.item.id: other.item.id for one, other in zip(room.rounds, rounds, strict=True)}
    twins = {now.get(item, item): number for item, number in room.twins.items()}
    return replace(room, ahead=ahead, rounds=rounds, twins=twins)


def other_key(item: Item, shift: int) -> Item:
    """The same item as asked, with another key and with nothing else that could tell it."""
    letters = [option.letter for option in item.options]
    key = tuple(letters[(letters.index(letter) + shift) % len(letters)] for letter in item.key)
    if item.format == "pick_n":
        key = tuple(sorted(key))
    return replace(
        item,
        id=f"{item.id} {shift}",
        direction="another",
        subject="another",
        options=tuple(_other_option(option, key) for option in item.options),
        key=key,
        stems=tuple(replace(stem, concept="another", reason=reason("another row")) for stem in item.stems),
        accepted=tuple(accepted(f"other {one.text}") for one in item.accepted[1:]) or (accepted("x"),),
        near=(NearTerm(concept="y", term="axillary nerve", tells="Something else."),),
        why=reason("quite another thing"),
        facts=("another fact",),
        muscles=("teres minor",),
        records=(record("Teres minor", nerve="axillary nerve"),) * 2,
    )


def with_other_answers(room: Room, but: Iterable[str] = ()) -> Room:
    """The same room in which everybody but these has answered differently: the open round, and held ones."""
    rounds = (one if one.shown_at is not None else _otherwise(one, but) for one in room.rounds)
    return replace(room, rounds=tuple(rounds))


def _otherwise(current: Round, but: Iterable[str]) -> Round:
    item = current.item
    letters = tuple(option.letter for option in item.options)
    other = Answer(choice=letters[-item.pick :], typed=() if letters else ("ruder words",), at=after(9000))
    first, second = (
        {player: answer if player in but else other for player, answer in answers.items()}
        for answers in (current.answers, current.second_answers)
    )
    return replace(current, answers=first, second_answers=second)


def _other_option(option: Option, key: tuple[str, ...]) -> Option:
    source: DistractorSource = "key" if option.letter in key else "same_region"
    return replace(
        option, concept=f"other {option.concept}", reason=reason("another one altogether"), source=source
    )
