"""A desk with two rooms."""

from quizroom.room.commands import OpenDoor, OpenRound
from tests.room.samples import preparation
from tests.service.fakes import Desk, WatchedLog, seated


def open_two_rooms(log: WatchedLog) -> Desk:
    desk = seated(log)
    for order in (preparation(), OpenDoor(door_code="KMNPR"), OpenRound(round=1)):
        desk.rooms.handle("room-2", order)
    return desk
