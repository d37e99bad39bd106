"""Every refusal as a clear sentence that says what to do."""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

from quizroom.room.refusals import RefusalCode

WireCode = Literal[
    "bad_message",
    "cannot_deal",
    "groups_off",
    "no_door_free",
    "no_seat",
    "no_such_own_item",
    "not_host",
    "not_ready",
    "rude_handle",
    "slow_down",
    "too_many_groups",
    "unknown_course",
    "unknown_door",
    "unknown_id",
    "unknown_room",
    "unknown_roster",
    "unknown_seat",
]
FailureCode = Literal["not_stored", "broken"]

SENTENCES: Mapping[RefusalCode | WireCode | FailureCode, str] = MappingProxyType(
    {
        "bad_bench": "A bench needs a name of at most 24 characters with at least one letter or figure.",
        "bad_choice": "That answer does not fit this item. Choose no more options than are asked for.",
        "bad_handle": "Please choose a handle of 1 to 40 characters with at least one letter or figure.",
        "bad_message": "The server could not read that message.",
        "bad_time": "This round cannot be lengthened any further.",
        "bench_has_answered": "Your bench has handed in; your own answer stays as it is.",
        "benches_drawn": "Benches are drawn in this review.",
        "broken": "Something went wrong on the server. Your message will be sent again.",
        "cannot_deal": "These settings do not yield enough items.",
        "door_shut": "This review has not been opened yet. Wait for your instructor to open the door.",
        "empty_answer": "Choose or write something first, then hand it in.",
        "first_alone": "Answer by yourself first, then hand in for your bench.",
        "finished": "This review is finished.",
        "groups_off": "On this server only hosts open rooms. Ask your instructor.",
        "handle_taken": "Somebody in this room already has that handle. Add a word or a figure to yours.",
        "has_claimed": "This seat is on the roster already. If that is not you, tell your instructor.",
        "id_is_taken": "Another seat has been claimed with that id. If it is yours, tell your instructor.",
        "led_by_host": "Your host leads this review; nothing is to be done here.",
        "no_benches": "You sit at no bench that hands in together.",
        "no_door_free": "No door code is free just now. End an old review and try again.",
        "no_items_left": "There is no item left. Add rounds by laying out another review, or end this one.",
        "no_seat": "Take a seat first: enter the door code and a handle.",
        "no_such_item": "That item has changed or its round has been opened. Look at the list again.",
        "no_such_own_item": "That item is not among your own items any more. Choose another.",
        "no_such_player": "That player is not in this room any more.",
        "no_such_round": "That round is not there for you.",
        "no_tries_left": "That was too many wrong ids. Ask your instructor to put you on the roster by hand.",
        "not_answering": "That round is not open.",
        "not_closed": "The record is shown after the round is closed.",
        "not_for_credit": "This review is not for credit; a handle is all that it asks for.",
        "not_host": "Only the host may do that. Open the desk link that the server printed.",
        "not_ready": "That item of yours has something to mend. Open it under Own items; it says what.",
        "not_opener": "Only whoever opened this room may send somebody else out.",
        "not_stored": "The server could not save that; nothing was changed. It will be tried again.",
        "room_full": "This room is full. Ask whoever opened it to make room, or share a seat.",
        "round_is_open": "A round is open. Close it before you open the next.",
        "rude_handle": "That handle could read rudely on the wall. Please choose another.",
        "seat_taken": "That seat is taken. Reload the page to get another.",
        "slow_down": "That was too much at once. Wait a moment and try again.",
        "too_early": "The time of this round is not over yet.",
        "too_late": "This round is closed. The answer that you handed in before counts.",
        "too_many_items": "A review holds 60 items at most. Drop one before you add another.",
        "too_many_groups": "All places for study groups are taken just now. Try again in a while.",
        "unknown_course": "That course list is not on this server. Choose another one.",
        "unknown_door": "No open room has this door code. Check the five letters on the wall.",
        "unknown_id": "That id is not on the roster of this review. Type it as it stands on your card.",
        "unknown_room": "That review is not on this server.",
        "unknown_roster": "That class roster is not on this server any more. Choose another one.",
        "unknown_seat": "Your seat in this room was not found. Enter with a handle.",
        "wrong_phase": "That cannot be done at this point of the review.",
    }
)
