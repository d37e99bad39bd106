"""What the study sheet and the calendar are made from: a player's missed rounds, and the return plan."""

from collections.abc import Callable
from math import ceil
from zoneinfo import ZoneInfo

from flask import request

from quizroom.exchange.calendar import Sitting
from quizroom.exchange.study_rows import StudyEntry, study_entry
from quizroom.knowledge.record import Record
from quizroom.pages.mine_api import Mine
from quizroom.pages.mine_entry import player_of_request, welcome_of_request
from quizroom.pages.running_apart import Apart
from quizroom.pages.take_away import PlayersPlan, TakeAway, printed
from quizroom.questions.model import Family
from quizroom.service.feed_ports import FeedStore
from quizroom.service.mind import Mind, zone_of
from quizroom.service.second_look import Day


def take_away_over(
    mine: Mine, feeds: FeedStore, *, new_secret: Callable[[], str], address: str, run_apart: Apart
) -> TakeAway:
    """Sheet and feeds of the players; where the server was told no address, that of the request."""
    looks = mine.second_looks
    return TakeAway(
        player=player_of_request,
        welcome=lambda: welcome_of_request(mine.players, looks.clock.now()),
        missed=lambda player, room: missed_entries(looks.mind(player), room),
        plan=lambda player: plan_of(looks.today(player)),
        feeds=feeds,
        clock=looks.clock,
        new_secret=new_secret,
        address=lambda: (address or request.url_root).rstrip("/"),
        print_sheet=lambda entries, paper: run_apart(printed, entries, paper),
    )


def missed_entries(mind: Mind, room: str) -> tuple[StudyEntry, ...]:
    """The records of what was missed in one review, or in all if `room` is empty: each muscle once."""
    records: dict[str, Record] = {}
    missed: dict[str, set[Family]] = {}
    for history in mind.histories:
        rounds = history.missed if room in ("", history.room) else ()
        for item in (played.item for played in rounds):
            for record in item.records:
                records.setdefault(record.muscle, record)
                missed.setdefault(record.muscle, set()).add(item.family)
    return tuple(study_entry(record, frozenset(missed[muscle])) for muscle, record in records.items())


def plan_of(day: Day) -> PlayersPlan:
    """The days on which the plan wants something; today with what is left of it."""
    mind = day.mind
    left = sum(look.item.seconds for look in day.looks if look.id not in mind.answers)
    ahead = [(sitting.day, sitting.seconds) for sitting in day.outlook.sittings if sitting.day > mind.today]
    return PlayersPlan(
        today=mind.today,
        zone=zone_of(mind.wishes.time_zone) or ZoneInfo("UTC"),
        sittings=tuple(
            Sitting(day=when, minutes=ceil(seconds / 60))
            for when, seconds in ((mind.today, left), *ahead)
            if seconds > 0
        ),
    )
