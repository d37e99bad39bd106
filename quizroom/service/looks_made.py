"""Making looks: what was missed or comes back, asked again from today's content."""

from collections.abc import Iterable, Sequence
from dataclasses import replace
from hashlib import sha256
from random import Random

from quizroom.knowledge.catalogue import Catalogue
from quizroom.questions.again import ask_again
from quizroom.questions.model import Item
from quizroom.questions.sequence import in_order
from quizroom.questions.syllabus import Syllabus, syllabus_of
from quizroom.second_look.asked import AskedLook
from quizroom.second_look.knowing import Known, weakest
from quizroom.second_look.sighting import row_facts, sightings_of
from quizroom.service.mind import Mind, Source, missed_facts, round_origin
from quizroom.service.seat_history import PlayedRound, SeatHistory


def look_id(player: str, why: str) -> str:
    """The id of the look that a player gets for a reason: a second asking must not make a second one."""
    return sha256(f"{player} {why}".encode()).hexdigest()[:24]


def missed_id(player: str, history: SeatHistory, played: PlayedRound) -> str:
    """The id of the look at what was missed in a round; a new one if its item was exchanged."""
    return look_id(player, f"second {round_origin(history, played)} {played.item.id}")


def missed_look(
    catalogue: Catalogue, mind: Mind, player: str, history: SeatHistory, played: PlayedRound
) -> AskedLook:
    """What was missed in a round, asked again; of a matching with one wrong row, that row alone."""
    source = Source(item=played.item, course=history.course, missed=played.missed)
    new_id = missed_id(player, history, played)
    facts = missed_facts(played)
    return AskedLook(
        id=new_id,
        player=player,
        set=f"second-{history.room}",
        place=played.number,
        made_at=mind.now,
        course=history.course,
        origin=round_origin(history, played),
        item=_again(catalogue, mind, source, new_id, about=_single_row(played)),
        missed=played.missed,
        fact=facts[0] if len(facts) == 1 else "",
    )


def returning_id(player: str, set_id: str, known: Known) -> str:
    """The id of the look at a fact that comes back on a day."""
    return look_id(player, f"{set_id} {known.fact}")


def returning_look(catalogue: Catalogue, mind: Mind, player: str, set_id: str, known: Known) -> AskedLook:
    """A fact that comes back: in the direction that is forgotten first, or in one that is new."""
    direction, _ = weakest(known)
    source = mind.sources[known.origins[direction]]
    new_id = returning_id(player, set_id, known)
    item = _again(
        catalogue,
        mind,
        source,
        new_id,
        about=tuple(known.fact.split("+")) if source.item.format == "matching" else (),
        direction=direction if len(known.memories) > 1 else "",
    )
    return AskedLook(
        id=new_id,
        player=player,
        set=set_id,
        place=1,
        made_at=mind.now,
        course=source.course,
        origin=f"plan {known.fact}",
        item=item,
        missed=mind.missed_of(known),
        fact=known.fact,
    )


def interleaved(catalogue: Catalogue, looks: Sequence[AskedLook], seed: str) -> tuple[AskedLook, ...]:
    """Look-alikes one after the other, else compartments mixed (Brunmair & Richter 2019)."""
    syllabus = next(filter(None, (_syllabus(catalogue, look.course) for look in looks)), None)
    if syllabus is None:
        return tuple(looks)
    known = [
        look for look in looks if set(look.item.muscles) <= catalogue.muscles.keys() and look.item.muscles
    ]
    of_item = {id(look.item): look for look in known}
    random = Random(seed)  # noqa: S311 -- an order is to be repeatable, not secret
    ordered = in_order(syllabus, [look.item for look in known], random, interleave=True)
    rest = [look for look in looks if id(look.item) not in of_item]
    return (*(of_item[id(item)] for item in ordered), *rest)


def numbered(looks: Iterable[AskedLook]) -> tuple[AskedLook, ...]:
    """The looks with their places in this order, from 1."""
    return tuple(replace(look, place=place) for place, look in enumerate(looks, 1))


def _again(
    catalogue: Catalogue,
    mind: Mind,
    source: Source,
    new_id: str,
    *,
    about: tuple[str, ...] = (),
    direction: str = "",
) -> Item:
    """The item asked another way; as it was, if its course list is not there any more."""
    own = _syllabus(catalogue, mind.wishes.course)
    if own is None or not own.on_list.issuperset(source.item.muscles):
        own = _syllabus(catalogue, source.course)
    if own is None:
        return source.item
    return ask_again(own, source.item, int(new_id[:7], 16), about=about, direction=direction)


def _syllabus(catalogue: Catalogue, course: str) -> Syllabus | None:
    known = catalogue.courses.get(course)
    return None if known is None else syllabus_of(catalogue, known)


def _single_row(played: PlayedRound) -> tuple[str, ...]:
    """The facts of the one wrong row of a matching; nothing if more were wrong, or for other formats."""
    if played.item.format != "matching":
        return ()
    told = sightings_of(played.item, played.said, at=played.at, origin="")
    wrong = [facts for facts, sighting in zip(row_facts(played.item), told, strict=True) if sighting.missed]
    return wrong[0] if len(wrong) == 1 else ()
