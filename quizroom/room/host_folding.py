"""A room after an event about the review as a thing."""

from dataclasses import replace

from quizroom.room.host_events import HostEvent, ItemMoved, ReviewChanged, ReviewHandedOver, ReviewRenamed
from quizroom.room.state import Plan, Room


def after(room: Room, event: HostEvent) -> Room:
    """The room after `event`."""
    match event:
        case ReviewHandedOver():
            return replace(room, host=event.host)
        case ReviewRenamed():
            return replace(room, plan=replace(room.plan, title=event.title))
        case ReviewChanged():
            return replace(room, plan=plan_after(room.plan, event))
        case ItemMoved():
            rest = room.ahead[: event.position] + room.ahead[event.position + 1 :]
            moved = room.ahead[event.position]
            return replace(room, ahead=(*rest[: event.to], moved, *rest[event.to :]))


def plan_after(plan: Plan, event: ReviewChanged) -> Plan:
    """The plan as it was chosen anew."""
    wish = event.players_take_time
    return replace(
        plan,
        timing=event.timing,
        seconds=event.seconds,
        certainty=event.certainty,
        players_take_time=plan.players_take_time if wish is None else wish,
    )
