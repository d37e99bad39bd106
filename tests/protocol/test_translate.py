"""From messages to orders of the room."""

from typing import Any

import pytest

from quizroom.protocol import seat_messages
from quizroom.protocol.blueprint import BlueprintCell, BlueprintChoice
from quizroom.protocol.change_messages import FlagItem, UnflagItem
from quizroom.protocol.codec import read_message
from quizroom.protocol.plans import blueprint_of
from quizroom.protocol.translate import PlainMessage, answer_command, flag_command, host_command
from quizroom.room import change_commands, commands
from tests.protocol.wording import message

HOST = "M. Sorrel"
RULING = commands.RuleOnWords(round=1, words="axilary nerve", accept=True, by=HOST)
REKEYING = change_commands.RekeyItem(round=1, key=("A", "B"), reason="My book says so.", by=HOST)


def host_message(kind: str, **changes: Any) -> PlainMessage:
    read = read_message(message(kind, **changes))
    assert isinstance(read, PlainMessage)
    return read


def test_an_answer_is_always_for_the_seat_of_the_connection() -> None:
    read = read_message(message("submit_answer", round=3, choice=["C", "A"]))
    assert isinstance(read, seat_messages.SubmitAnswer)
    assert answer_command(read, "ada") == commands.SubmitAnswer(player="ada", round=3, choice=("C", "A"))


@pytest.mark.parametrize(
    "kind,command",
    [
        ("open_round", commands.OpenRound(round=1)),
        ("pause_round", commands.PauseRound(round=1)),
        ("resume_round", commands.ResumeRound(round=1)),
        ("close_round", commands.CloseRound(round=1, by_host=True)),
        ("show_record", commands.ShowRecord(round=1)),
        ("end_review", commands.EndReview()),
        ("drop_item", commands.DropItem(position=0, item="i")),
        ("add_time", commands.AddTime(seconds=15, order="m1")),
        ("strike_item", commands.StrikeItem(round=1, by=HOST)),
        ("restore_item", commands.RestoreItem(round=1, by=HOST)),
        ("rule_on_words", RULING),
        ("rekey_item", REKEYING),
        ("restore_key", change_commands.RekeyItem(round=1, by=HOST)),
        ("settle_flags", change_commands.SettleFlags(round=1, settled=True, by=HOST)),
        ("show_standings", commands.ShowStandings(on=True)),
        ("rename_player", commands.RenamePlayer(player="p", handle="Ada")),
        ("remove_player", commands.RemovePlayer(player="p", by=HOST)),
    ],
)
def test_a_message_of_the_host_is_one_order(kind: str, command: commands.Command) -> None:
    assert host_command(host_message(kind), by=HOST) == command


def test_a_flag_is_always_for_the_seat_of_the_connection() -> None:
    up, down = (read_message(message(kind)) for kind in ("flag_item", "unflag_item"))
    assert isinstance(up, FlagItem)
    assert isinstance(down, UnflagItem)
    text = "Is it not the radial nerve?"
    assert flag_command(up, "ada") == change_commands.FlagItem(player="ada", round=1, text=text)
    assert flag_command(down, "ada") == change_commands.UnflagItem(player="ada", round=1)


def choice(*rounds: int, **more: Any) -> BlueprintChoice:
    cells = (
        BlueprintCell(region=f"r{place}", family="nerve", rounds=count) for place, count in enumerate(rounds)
    )
    return BlueprintChoice(cells=tuple(cells), **more)


def test_a_blueprint_keeps_the_cells_that_have_rounds() -> None:
    blueprint = blueprint_of(choice(2, 0, 1, warm_up=1, interleave=False, aim="hard"))
    assert [(cell.region, cell.family, cell.rounds) for cell in blueprint.cells] == [
        ("r0", "nerve", 2),
        ("r2", "nerve", 1),
    ]
    assert (blueprint.rounds, blueprint.warm_up, blueprint.interleave, blueprint.aim) == (4, 1, False, "hard")


def test_weights_become_whole_rounds_by_the_largest_remainder() -> None:
    blueprint = blueprint_of(choice(1, 1, 1, 0, share=10))
    assert [cell.rounds for cell in blueprint.cells] == [4, 3, 3]


@pytest.mark.parametrize("kind", ["swap_item", "open_door"])
def test_what_needs_more_than_the_room_is_no_plain_order(kind: str) -> None:
    assert host_command(host_message(kind), by=HOST) is None
