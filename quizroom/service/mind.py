"""What one player knows: the sightings of all reviews and looks, added up."""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime
from zoneinfo import ZoneInfo

from quizroom.questions.model import Item
from quizroom.second_look.asked import AskedLook, GivenAnswer, Missed, Wishes
from quizroom.second_look.knowing import Known, known_facts
from quizroom.second_look.plan import Aim, due_on
from quizroom.second_look.sighting import Sighting, sightings_of
from quizroom.service.look_marks import judged_look
from quizroom.service.seat_history import PlayedRound, SeatHistory


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """Where an item lies: in a round of a review, or in a look."""

    item: Item
    course: str
    missed: Missed | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Mind:
    """What a player knows, on which day of theirs, and what for."""

    known: Mapping[str, Known]
    sources: Mapping[str, Source]
    histories: tuple[SeatHistory, ...]
    looked: Mapping[str, datetime]
    """When each fact was last asked in a look, not in a review."""
    answers: Mapping[str, GivenAnswer]
    wishes: Wishes
    aim: Aim
    now: datetime
    today: date

    def day_of(self, moment: datetime) -> date:
        """The player's own date at a moment."""
        return day_in(self.wishes.time_zone, moment)

    def due(self) -> tuple[tuple[date, Known], ...]:
        """Every fact that comes back, with its day."""
        days = ((due_on(one, self.day_of(one.seen_at), self.aim), one) for one in self.known.values())
        return tuple((day, one) for day, one in days if day is not None)

    def missed_of(self, known: Known) -> Missed | None:
        """What was last answered wrongly about a fact in a review."""
        found = (self.sources[origin].missed for origin in known.origins.values() if origin in self.sources)
        return next((missed for missed in found if missed is not None), None)


def mind_of(
    histories: tuple[SeatHistory, ...],
    looks: Mapping[str, AskedLook],
    answers: Mapping[str, GivenAnswer],
    wishes: Wishes,
    *,
    now: datetime,
    breathe: Callable[[], None] = lambda: None,
) -> Mind:
    """Add up everything that a player was asked; `breathe` is called now and then."""
    sightings: list[Sighting] = []
    sources: dict[str, Source] = {}
    for history in histories:
        for played in history.rounds:
            origin = round_origin(history, played)
            sources[origin] = Source(item=played.item, course=history.course, missed=played.missed)
            sightings += sightings_of(played.item, played.said, at=played.at, origin=origin)
    looked: dict[str, datetime] = {}
    for look in looks.values():
        breathe()
        sources[look_origin(look)] = Source(item=look.item, course=look.course, missed=look.missed)
        for sighting in look_sightings(look, answers[look.id]):
            sightings.append(sighting)
            looked[sighting.fact] = max(sighting.at, looked.get(sighting.fact, sighting.at))
    today = day_in(wishes.time_zone, now)
    dated = wishes.exam_date is not None and wishes.exam_date >= today
    return Mind(
        known=known_facts(sightings, breathe),
        sources=sources,
        histories=histories,
        looked=looked,
        answers=answers,
        wishes=wishes,
        aim=Aim(exam_on=wishes.exam_date if dated else None, seconds_a_day=wishes.minutes_a_day * 60),
        now=now,
        today=today,
    )


def still_missed(mind: Mind, history: SeatHistory) -> Iterator[PlayedRound]:
    """The missed rounds of a review whose facts were not looked at since."""
    for played in history.missed:
        facts = missed_facts(played)
        if any(mind.looked.get(fact, played.at) <= played.at for fact in facts):
            yield played


def missed_facts(played: PlayedRound) -> tuple[str, ...]:
    """What was missed in a round: of a matching the rows that were wrong."""
    told = sightings_of(played.item, played.said, at=played.at, origin="")
    return tuple(sighting.fact for sighting in told if sighting.missed)


def look_sightings(look: AskedLook, answer: GivenAnswer) -> Iterable[Sighting]:
    """What an answered look tells."""
    said = judged_look(look.item, answer).said
    yield from sightings_of(look.item, said, at=answer.answered_at, origin=look_origin(look), fact=look.fact)


def round_origin(history: SeatHistory, played: PlayedRound) -> str:
    """How sightings refer to a round of a review."""
    return f"room {history.room} {played.number}"


def look_origin(look: AskedLook) -> str:
    """How sightings refer to a look."""
    return f"look {look.id}"


def day_in(time_zone: str, moment: datetime) -> date:
    """The date at a moment in a time zone; in UTC where the zone is not known here."""
    return moment.astimezone(zone_of(time_zone) or UTC).date()


def zone_of(name: str) -> ZoneInfo | None:
    """The zone of this name in the IANA time zone database; None if there is none."""
    try:
        return ZoneInfo(name)
    except (ValueError, OSError, KeyError):  # ZoneInfoNotFoundError is a KeyError
        return None
