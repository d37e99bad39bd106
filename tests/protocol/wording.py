"""One good message of each type, as a browser sends it."""

from typing import Any, get_args

from quizroom.protocol.messages import ClientMessage

PLAIN: dict[str, dict[str, Any]] = {
    "enter_seat": {
        "door_code": "CDFHJ",
        "handle": "Teal Talus",
        "seat_key": "k" * 32,
        "player_key": "",
    },
    "resume_seat": {"door_code": "CDFHJ", "seat_key": "k" * 32, "player_key": ""},
    "keep_results": {"player_key": "abcdefghijklmn27"},
    "watch_wall": {"door_code": "CDFHJ"},
    "show_view": {},
    "probe_time": {},
    "submit_answer": {"round": 1, "choice": ["B"], "typed": []},
    "prepare_review": {
        "title": "Upper limb",
        "course": "intro_upper_limb",
        "families": ["action"],
        "rounds": 3,
        "timing": "computed",
        "seconds": 45,
        "typed": True,
        "standings": False,
        "seed": 7,
        "blueprint": None,
        "benches": None,
    },
    "claim_identity": {"institutional_id": "HH000101"},
    "list_reviews": {},
    "open_desk": {"room": "room-1"},
    "swap_item": {"position": 0, "item": "i"},
    "drop_item": {"position": 0, "item": "i"},
    "add_own_item": {"position": 0, "own_item": "i1"},
    "swap_for_own": {"position": 0, "item": "i", "own_item": "i1"},
    "open_door": {"round": 0},
    "open_round": {"round": 1},
    "open_stations": {"round": 1},
    "ring_bell": {"round": 1},
    "pause_round": {"round": 1},
    "resume_round": {"round": 1},
    "close_round": {"round": 1},
    "show_record": {"round": 1},
    "show_result": {"round": 1},
    "hold_results": {"on": True},
    "let_talk": {"round": 1, "seconds": 120},
    "open_again": {"round": 1},
    "close_again": {"round": 1},
    "ask_twin": {"round": 1},
    "end_review": {"round": 1},
    "add_time": {"seconds": 15},
    "strike_item": {"round": 1},
    "restore_item": {"round": 1},
    "rule_on_words": {"round": 1, "words": "axilary nerve", "accept": True},
    "rekey_item": {"round": 1, "key": ["A", "B"], "terms": [], "reason": "My book says so."},
    "restore_key": {"round": 1},
    "settle_flags": {"round": 1, "settled": True},
    "flag_item": {"round": 1, "text": "Is it not the radial nerve?"},
    "unflag_item": {"round": 1},
    "rename_review": {"room": "room-1", "title": "Forearm"},
    "change_review": {"room": "room-1", "timing": "fixed", "seconds": 30, "certainty": True},
    "copy_review": {"room": "room-1", "dealt": "same"},
    "schedule_review": {"room": "room-1", "at": 1_950_000_000_000, "opens_itself": False},
    "archive_review": {"room": "room-1"},
    "unarchive_review": {"room": "room-1"},
    "delete_review": {"room": "room-1"},
    "move_item": {"position": 0, "item": "i", "to": 1},
    "show_standings": {"on": True},
    "rename_player": {"player": "p", "handle": "Ada"},
    "open_group": {
        "course": "intro_upper_limb",
        "rounds": 3,
        "timing": "computed",
        "handle": "Teal Talus",
        "seat_key": "k" * 32,
        "player_key": "",
        "title": "Tuesday Table",
        "seconds": 45,
        "typed": True,
        "standings": True,
        "reading_seconds": 60,
    },
    "say_ready": {"round": 0, "alone": False},
    "ask_pause": {"round": 1},
    "go_on": {"round": 1},
    "rename_self": {"handle": "Teal Talus"},
    "send_out": {"player": "p"},
    "take_bench": {"bench": "Bench 1"},
    "answer_for_bench": {"round": 1, "choice": ["B"], "typed": []},
    "seat_at_bench": {"player": "p", "bench": "Bench 1"},
    "draw_benches": {},
    "rename_bench": {"bench": "Bench 1", "name": "Carpals"},
    "remove_player": {"player": "p"},
    "set_time_factor": {"player": "p", "factor_percent": 150},
    "make_time_link": {"secret": "0" * 32, "factor_percent": 200},
    "bring_time": {"secret": "0" * 32},
    "take_time": {"round": 1, "time": 1, "again": False},
    "take_time_always": {"on": True},
}


def message(kind: str, **changes: Any) -> dict[str, Any]:
    """A good message of this type, but for the changes."""
    return {"id": "m1", "type": kind, **PLAIN[kind], **changes}


def all_types() -> set[str]:
    """Every type that the wire knows."""
    union = get_args(get_args(ClientMessage)[0])
    return {name for shape in union for name in get_args(shape.__annotations__["type"])}
