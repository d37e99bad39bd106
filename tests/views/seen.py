"""What the wall, a seat and the desk see of a room."""

from quizroom.marking import marks_of_room
from quizroom.room.state import Room
from quizroom.views.desk import desk_view
from quizroom.views.desk_model import DeskView
from quizroom.views.own import own_view
from quizroom.views.own_model import OwnView
from quizroom.views.public import public_view
from quizroom.views.public_model import PublicView
from quizroom.views.result_model import ResultFace
from tests.views.twins import NOW


def public(room: Room) -> PublicView:
    """What everybody sees."""
    return public_view(room, marks_of_room(room), NOW)


def result(room: Room) -> ResultFace:
    """The result that everybody sees."""
    found = public(room).result
    assert found is not None
    return found


def own(room: Room, player: str = "ada") -> OwnView:
    """What one player sees besides."""
    return own_view(room, player, marks_of_room(room), NOW)


def desk(room: Room) -> DeskView:
    """What the host sees."""
    return desk_view(room, marks_of_room(room), NOW)
