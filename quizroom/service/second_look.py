"""What one player does alone: going over what was missed, and what comes back by the return plan.

A look is made when it is first asked for, under an id that follows from whose it is and why: so asking twice
makes it once. Looks come from explained rounds alone, so their solutions may go along.
"""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date, datetime, timedelta
from functools import partial

from quizroom.knowledge.catalogue import Catalogue
from quizroom.second_look.asked import AskedLook, GivenAnswer, Wishes
from quizroom.second_look.plan import Outlook, choose, due_on, look_ahead
from quizroom.service.look_marks import JudgedLook, fitting, judged_look
from quizroom.service.look_ports import LookStore, SeatsOfPlayers
from quizroom.service.looks_made import (
    interleaved,
    missed_id,
    missed_look,
    numbered,
    returning_id,
    returning_look,
)
from quizroom.service.mind import Mind, look_sightings, mind_of, still_missed, zone_of
from quizroom.service.ports import Clock
from quizroom.service.seat_history import SeatHistories, SeatHistory

MOST_KNOWN = 50_000
"""Looks kept in memory; they never change."""
EARLIEST = timedelta(days=60)
"""An outbox that is older is not believed: its answers count as given so long ago."""


class NoSuchReview(Exception):
    """The player had no seat in this review, or it is not kept any more."""


class UnknownZone(Exception):
    """The time zone database has no such zone."""


class UnknownList(Exception):
    """No course list has this id."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Answered:
    """What came of an answer: nothing for a look that is not there. `due` is when its fact comes back."""

    look: str
    judged: JudgedLook | None
    due: date | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Day:
    """What a player should do today, what they know, and what is ahead."""

    looks: tuple[AskedLook, ...]
    mind: Mind
    outlook: Outlook


@dataclass(frozen=True, slots=True, kw_only=True)
class SecondLooks:
    """The service. `catalogue` is today's content: what is asked again is dealt from it."""

    catalogue: Catalogue
    players: SeatsOfPlayers
    histories: SeatHistories
    store: LookStore
    clock: Clock
    breathe: Callable[[], None] = lambda: None
    """Lets the rooms be served while a long history is added up."""
    known: dict[str, AskedLook] = field(default_factory=dict)

    def mind(self, player: str) -> Mind:
        """What the player knows now."""
        answers = self.store.answers_of(player)
        return mind_of(
            self.histories.of(self.players.seats_of(player)),
            self._looks(player, answers),
            answers,
            self.wishes(player),
            now=self.clock.now(),
            breathe=self.breathe,
        )

    def wishes(self, player: str) -> Wishes:
        """What the player's plan is made for."""
        return self.store.wishes(player) or Wishes()

    def set_wishes(self, player: str, wishes: Wishes) -> None:
        """Keep what the plan is made for.

        Raises:
            UnknownZone: there is no such time zone.
            UnknownList: there is no such course list.
            NotStored: nothing was kept.
        """
        if zone_of(wishes.time_zone) is None:
            raise UnknownZone(wishes.time_zone)
        if wishes.course and wishes.course not in self.catalogue.courses:
            raise UnknownList(wishes.course)
        self.store.set_wishes(player, wishes)

    def second_look(self, player: str, room: str) -> tuple[SeatHistory, tuple[AskedLook, ...]]:
        """What was missed in a review and not looked at since, asked again: certain and wrong first.

        Raises:
            NoSuchReview: the player had no seat there.
        """
        mind = self.mind(player)
        history = next((one for one in mind.histories if one.room == room), None)
        if history is None:
            raise NoSuchReview(room)
        wanted = {missed_id(player, history, played): played for played in still_missed(mind, history)}
        make = partial(missed_look, self.catalogue, mind, player, history)
        looks = self._made(player, {one: partial(make, played) for one, played in wanted.items()})
        return history, numbered(look for look in looks if look.id not in mind.answers)

    def today(self, player: str) -> Day:
        """What is due today, within the minutes that are left of the day, and the days ahead."""
        mind = self.mind(player)
        set_id = f"day-{mind.today.isoformat()}"
        done = (look for look in self.store.looks_of_set(player, set_id) if look.id in mind.answers)
        left = max(0, mind.aim.seconds_a_day - sum(look.item.seconds for look in done))
        due = mind.due()
        facts = choose((one for day, one in due if day <= mind.today), now=mind.now, seconds=left)
        make = partial(returning_look, self.catalogue, mind, player, set_id)
        looks = self._made(player, {returning_id(player, set_id, one): partial(make, one) for one in facts})
        return Day(
            looks=numbered(interleaved(self.catalogue, _within(looks, left), set_id)),
            mind=mind,
            outlook=look_ahead(
                due, mind.aim, now=mind.now, today=mind.today, first_day_seconds=left, breathe=self.breathe
            ),
        )

    def answer(self, player: str, answers: Sequence[GivenAnswer]) -> tuple[Answered, ...]:
        """Keep the first answer to each look, durably, and say what came of it. Raises `NotStored`."""
        asked = self.store.looks(player, (answer.look for answer in answers))
        fitted = [_fitted(asked[answer.look], answer) for answer in answers if answer.look in asked]
        if fitted:
            self.store.add_answers(player, fitted)
        mind = self.mind(player)
        return tuple(_answered(mind, asked.get(answer.look), answer.look) for answer in answers)

    def _looks(self, player: str, ids: Iterable[str]) -> dict[str, AskedLook]:
        wanted = tuple(ids)
        if len(self.known) > MOST_KNOWN:
            self.known.clear()
        self.known.update(self.store.looks(player, (one for one in wanted if one not in self.known)))
        return {one: self.known[one] for one in wanted if one in self.known}

    def _made(self, player: str, makers: Mapping[str, Callable[[], AskedLook]]) -> tuple[AskedLook, ...]:
        """The looks of these ids, in order; those that are not kept yet are made and kept."""
        kept = self.store.looks(player, makers)
        fresh = {one: make() for one, make in makers.items() if one not in kept}
        if fresh:
            self.store.add_looks(tuple(fresh.values()))
        return tuple(kept.get(one) or fresh[one] for one in makers)


def _within(looks: Iterable[AskedLook], seconds: int) -> tuple[AskedLook, ...]:
    """Those that fit into the time: another wording may take longer than the one by which it was planned."""
    chosen: list[AskedLook] = []
    left = seconds
    for look in looks:
        if look.item.seconds <= left:
            chosen.append(look)
            left -= look.item.seconds
    return tuple(chosen)


def believed(look: AskedLook, answered_at: datetime, received_at: datetime) -> datetime:
    """When an answer was given, as far as a browser's clock may be believed.

    Not before the look was made, not after it came in, and not longer ago than outboxes are kept.
    """
    return min(max(answered_at, look.made_at, received_at - EARLIEST), received_at)


def _fitted(look: AskedLook, answer: GivenAnswer) -> GivenAnswer:
    choice, typed = fitting(look.item, answer.choice, answer.typed)
    at = believed(look, answer.answered_at, answer.received_at)
    return replace(answer, choice=choice, typed=typed, answered_at=at)


def _answered(mind: Mind, look: AskedLook | None, look_id: str) -> Answered:
    given = mind.answers.get(look_id)
    if look is None or given is None:
        return Answered(look=look_id, judged=None, due=None)
    facts = [mind.known.get(sighting.fact) for sighting in look_sightings(look, given)]
    days = [due_on(known, mind.day_of(known.seen_at), mind.aim) for known in facts if known is not None]
    due = min((day for day in days if day is not None), default=None)
    return Answered(look=look_id, judged=judged_look(look.item, given), due=due)
