"""Which messages need a host, and which of them an owner: the one table of who may say what.

A message of hosts that is not named here is for owners alone; a test demands that each is named.
"""

from collections.abc import Mapping
from types import MappingProxyType
from typing import Literal

from quizroom.service.host_ports import Host

Right = Literal["run", "own"]
"""What both roles may do with the reviews that they lead, and what only their owner may."""

RIGHTS: Mapping[str, Right] = MappingProxyType(
    {
        "list_reviews": "run",
        "open_desk": "run",
        "open_door": "run",
        "swap_item": "run",
        "drop_item": "run",
        "open_round": "run",
        "pause_round": "run",
        "resume_round": "run",
        "add_time": "run",
        "close_round": "run",
        "show_record": "run",
        "hold_results": "run",
        "show_result": "run",
        "open_stations": "run",
        "ring_bell": "run",
        "let_talk": "run",
        "open_again": "run",
        "close_again": "run",
        "ask_twin": "run",
        "strike_item": "run",
        "restore_item": "run",
        "rule_on_words": "run",
        "rekey_item": "run",
        "restore_key": "run",
        "settle_flags": "run",
        "show_standings": "run",
        "rename_player": "run",
        "remove_player": "run",
        "set_time_factor": "run",
        "make_time_link": "run",
        "seat_at_bench": "run",
        "rename_bench": "run",
        "draw_benches": "run",
        "end_review": "run",
        "move_item": "run",
        "rename_review": "own",
        "change_review": "own",
        "copy_review": "own",
        "schedule_review": "own",
        "archive_review": "own",
        "unarchive_review": "own",
        "delete_review": "own",
        "prepare_review": "own",
        "add_own_item": "own",
        "swap_for_own": "own",
    }
)
OF_PLAYERS = frozenset(
    {
        *("enter_seat", "resume_seat", "watch_wall", "show_view", "probe_time"),
        *(
            "submit_answer",
            "keep_results",
            "bring_time",
            "take_time",
            "take_time_always",
            "flag_item",
            "unflag_item",
            "claim_identity",
            "take_bench",
            "answer_for_bench",
        ),
        *("open_group", "say_ready", "ask_pause", "go_on", "rename_self", "send_out"),
    }
)
"""Messages that need no host."""


def needs_host(kind: str, *, role: str) -> bool:
    """Whether a message is said as a host, from a connection in this role."""
    if kind == "draw_benches":
        return role != "seat"  # whoever opened a group may say it too
    if kind == "show_view":
        return role == "desk"
    return kind not in OF_PLAYERS


def may_say(host: Host, kind: str) -> bool:
    """Whether a host's role lets them say this."""
    return host.role == "owner" or kind == "show_view" or RIGHTS.get(kind) == "run"
