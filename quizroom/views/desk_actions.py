"""What the host may do now, the next step of the review first."""

from quizroom.analysis.talk import Advice
from quizroom.room.holding import is_held
from quizroom.room.state import Room, Round
from quizroom.room.stations import items_to_come, may_be_opened
from quizroom.room.talk import may_have_twin, may_talk
from quizroom.views.desk_model import DeskAction

Actions = tuple[DeskAction, ...]


def desk_actions(room: Room, advised: Advice | None = None) -> Actions:
    """What may be done; the first is the next step, as `advised` where a round may be talked over."""
    steps: Actions = ("open_round",) if items_to_come(room) else ()
    if may_be_opened(room):
        steps = ("open_stations", *steps)
    current = room.rounds[-1] if room.rounds else None
    match room.phase:
        case "preparing":
            return ("open_door",)
        case "gathering":
            return (*steps, "end_review")
        case "stations":
            return _at_stations(room, steps)
        case "answering":
            return ("close_round", *_clock_actions(current), *_strike(current), "end_review")
        case "talking":
            return ("open_again", *_clock_actions(current), *_strike(current), "end_review")
        case "answering again":
            return ("close_again", *_clock_actions(current), *_strike(current), "end_review")
        case "closed":
            return (*_after_closing(room, advised), *steps, *_strike(current), "end_review")
        case "explained":
            return _after_record(room, steps)
        case "finished":
            return _strike(current)


def _at_stations(room: Room, steps: Actions) -> Actions:
    block = room.stations
    if block is None or block.over:
        return (*steps, "end_review")
    return ("ring_bell", *(() if block.limit_ms is None else ("add_time",)), "end_review")


def _after_closing(room: Room, advised: Advice | None) -> Actions:
    if not is_held(room):
        return ("show_record", *_twin(room))
    if not may_talk(room):
        return ("show_result", "show_record", *_twin(room))
    match advised:
        case "talk":
            return ("let_talk", "show_result", "show_record")
        case "explain":
            return ("show_record", "show_result", "let_talk")
        case _:
            return ("show_result", "show_record", "let_talk")


def _after_record(room: Room, steps: Actions) -> Actions:
    strike = _strike(room.rounds[-1])
    if not steps:
        return ("end_review", *_twin(room), *strike)
    return (*steps, *_twin(room), *strike, "end_review")


def _twin(room: Room) -> Actions:
    return ("ask_twin",) if may_have_twin(room) else ()


def _strike(current: Round | None) -> Actions:
    if current is None:
        return ()
    return ("restore_item",) if current.struck else ("strike_item",)


def _clock_actions(current: Round | None) -> Actions:
    if current is None or current.limit_ms is None:
        return ()
    return ("resume_round" if current.paused else "pause_round", "add_time")
