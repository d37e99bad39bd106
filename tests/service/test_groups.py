"""Anybody may open a room for a study group, within limits."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import count

import pytest

from quizroom.room.commands import EndReview
from quizroom.room.group_state import GroupRules
from quizroom.room.refusals import Refused
from quizroom.room.state import Plan, Room
from quizroom.service.groups import GroupLimits, Groups, GroupsOff, TooManyGroups
from quizroom.service.ports import Entry, NotStored
from quizroom.service.reviews import Reviews
from quizroom.storage.memory import MemoryEventLog
from tests.service.courses import knowledge, plan_of
from tests.service.fakes import Desk

LIMITS = GroupLimits(on=True, size=4, most=2, hours=3)


def groups(desk: Desk, limits: GroupLimits = LIMITS) -> Groups:
    """Groups over live rooms."""
    seeds, ids = count(), count()
    reviews = Reviews(catalogue=knowledge(), rooms=desk.rooms, log=desk.log, new_seed=lambda: 7 * next(seeds))
    return Groups(
        reviews=reviews, rooms=desk.rooms, log=desk.log, limits=limits, new_id=lambda: f"p{next(ids)}"
    )


def group_plan() -> Plan:
    return replace(plan_of(), group=GroupRules(reading_s=60, hours=3))


def opened(by: Groups, order: str = "m1", handle: str = "Ada") -> Room:
    return by.open(group_plan(), handle=handle, key_hash="hash of ada", order=order)


def test_whoever_opens_a_room_sits_in_it_behind_an_open_door() -> None:
    desk = Desk()
    room = opened(groups(desk))
    assert (room.phase, room.host) == ("gathering", "")
    assert [player.handle for player in room.players.values()] == ["Ada"]
    assert desk.log.room_of_door(room.door_code) == room.id


def test_the_same_order_again_finds_the_same_room() -> None:
    desk = Desk()
    by = groups(desk)
    assert opened(by) == opened(by)
    assert opened(by, order="m2").id != opened(by).id


class OneAtATime(MemoryEventLog):
    """A log that is full again after each append."""

    full = False

    def append(self, entries: Sequence[Entry]) -> None:
        """Append once, then refuse until there is room again."""
        if self.full:
            raise NotStored("disk full")
        super().append(entries)
        self.full = True


def test_an_order_that_broke_off_is_carried_on_by_its_repeat() -> None:
    log = OneAtATime()
    by = groups(Desk(log))
    for _ in range(2):
        with pytest.raises(NotStored):
            opened(by)
        log.full = False
    assert len(opened(by).players) == 1
    assert len(log.unfinished_rooms()) == 1


def test_a_handle_that_is_no_good_leaves_no_room_behind() -> None:
    desk = Desk()
    with pytest.raises(Refused) as refused:
        opened(groups(desk), handle="  ")
    assert refused.value.code == "bad_handle"
    assert desk.log.unfinished_rooms() == ()


def test_only_so_many_groups_are_under_way_and_one_that_ends_makes_room() -> None:
    desk = Desk()
    by = groups(desk)
    first = opened(by, "m1")
    opened(by, "m2")
    with pytest.raises(TooManyGroups):
        opened(by, "m3")
    desk.rooms.handle(first.id, EndReview())
    assert opened(by, "m3").phase == "gathering"


def test_where_groups_are_off_nobody_opens_one() -> None:
    with pytest.raises(GroupsOff):
        opened(groups(Desk(), replace(LIMITS, on=False)))
