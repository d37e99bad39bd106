"""Why an order may be refused. Codes are for programs; the sentences live in `protocol.sentences`."""

from dataclasses import dataclass
from typing import Literal

RefusalCode = Literal[
    "ask_host_for_time",
    "at_stations",
    "bad_bench",
    "bad_choice",
    "bad_handle",
    "bad_key",
    "bad_time",
    "bad_time_link",
    "bench_has_answered",
    "bench_exists",
    "benches_drawn",
    "benches_talk",
    "door_shut",
    "empty_answer",
    "finished",
    "flagged_too_often",
    "handle_taken",
    "imported",
    "has_claimed",
    "id_is_taken",
    "led_by_host",
    "first_alone",
    "in_class",
    "held_for_own_time",
    "hold_results_first",
    "no_benches",
    "no_desk",
    "no_items_left",
    "no_own_time",
    "no_stations",
    "no_such_bench",
    "no_such_item",
    "no_such_player",
    "no_such_round",
    "no_title",
    "no_tries_left",
    "not_answering",
    "not_closed",
    "not_for_credit",
    "not_opener",
    "own_time_runs",
    "result_is_out",
    "round_is_open",
    "room_full",
    "seat_taken",
    "too_early",
    "too_late",
    "too_many_items",
    "words_too_long",
    "wrong_phase",
]


@dataclass(eq=False)  # not frozen: Python itself writes the traceback into an exception
class Refused(Exception):
    """An order that cannot be carried out now. Raised by `decide`, never by `apply`."""

    code: RefusalCode
