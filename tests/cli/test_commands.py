"""The command line, for all that needs no running server."""

import json
import sys
from collections.abc import Callable
from hashlib import blake2s
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from quizroom.cli import main
from quizroom.pages.host_parts import entry_over
from quizroom.questions.experience import AskCount
from quizroom.storage.class_choices import SqlClassChoices
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.system_clock import SystemClock
from tests.storage.databases import url_in
from tests.storage.entries import laid_out

COMMANDS = ("backup", "bench", "content", "desk-link", "items", "rehearse", "restore", "serve", "typed")
COURSE = ("--course", "intro_upper_limb")


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, arguments, catch_exceptions=False)


def refused(*arguments: str) -> str:
    result = run(*arguments)
    assert result.exit_code == 1
    assert result.output.startswith("Error: ")
    return result.output


def test_help_names_every_command_and_what_it_is_for() -> None:
    words = run("--help").output
    assert all(f"  {command} " in words for command in COMMANDS)


def test_no_command_but_serve_patches_the_standard_library() -> None:
    run("items", *COURSE, "--rounds", "1")
    assert "eventlet" not in sys.modules
    assert "quizroom.app" not in sys.modules


def test_a_desk_link_is_printed_and_works_once(tmp_path: Path) -> None:
    said = run("desk-link", "--data", str(tmp_path), "--port", "8123").output
    address, _, key = said.strip().rpartition("/desk/enter/")
    assert address == "http://127.0.0.1:8123"
    engine = open_database(url_in(tmp_path))
    entry = entry_over(engine, clock=SystemClock())
    assert entry.spend(key)
    assert entry.spend(key) is None
    engine.dispose()


def test_every_desk_link_is_another(tmp_path: Path) -> None:
    assert len({run("desk-link", "--data", str(tmp_path)).output for _ in range(3)}) == 3


def a_folder_for_a_database(folder: Path) -> Path:
    (folder / "quizroom.sqlite").mkdir()
    return folder


def a_file_for_a_folder(folder: Path) -> Path:
    (folder / "data").write_text("")
    return folder / "data" / "inside"


@pytest.mark.parametrize("spoilt", [a_folder_for_a_database, a_file_for_a_folder])
def test_a_data_folder_that_cannot_be_used_is_told(spoilt: Callable[[Path], Path], tmp_path: Path) -> None:
    words = refused("desk-link", "--data", str(spoilt(tmp_path)))
    assert "data folder" in words
    assert "--data" in words


@pytest.mark.parametrize("variable,value", [("QUIZROOM_PORT", "x"), ("QUIZROOM_CAPACITY", "0")])
def test_settings_that_cannot_be_used_are_named(
    variable: str, value: str, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.setenv(variable, value)
    words = refused("desk-link", "--data", str(tmp_path))
    assert variable.removeprefix("QUIZROOM_").lower() in words


def test_items_are_printed_for_people_with_key_and_reasons() -> None:
    words = run("items", *COURSE, "--rounds", "2", "--seed", "1").output
    assert words.count("[key]") >= 2
    assert words.count("  why: ") == 2
    assert words.count(", predicted)") == 2
    assert run("items", *COURSE, "--rounds", "2", "--seed", "1").output == words
    assert run("items", *COURSE, "--rounds", "2", "--seed", "2").output != words


def test_items_are_printed_for_machines_one_a_line() -> None:
    lines = run("items", *COURSE, "--family", "action", "--format", "jsonl").output.splitlines()
    items = [json.loads(line) for line in lines]
    assert len(items) > 10
    assert {item["family"] for item in items} == {"action"}


@pytest.mark.parametrize(
    "arguments,hint",
    [
        (("--course", "intro_uper_limb"), "intro_upper_limb"),
        ((*COURSE, "--family", "acton"), "action"),
        ((*COURSE, "--rounds", "999"), "Choose fewer rounds"),
        ((*COURSE, "--family", "nerve", "--rounds", "1"), "does not examine"),
    ],
)
def test_what_cannot_be_dealt_is_told_with_a_hint(arguments: tuple[str, ...], hint: str) -> None:
    assert hint in refused("items", *arguments)


def test_what_classes_of_a_server_chose_is_among_the_items_of_its_data_folder(tmp_path: Path) -> None:
    one = ("items", *COURSE, "--family", "nerve", "--format", "jsonl")
    first = json.loads(run(*one).output.splitlines()[0])
    engine = open_database(url_in(tmp_path))
    SqlEventLog(engine).append([laid_out("r1")])
    wrong = next(option["concept"] for option in reversed(first["options"]) if option["source"] != "key")
    count = AskCount(ask=asked_in(first), typed=False, answered=20, right=8, wrong={wrong: 12})
    SqlClassChoices(engine).replace("r1", course="intro_upper_limb", version=1, counts=[count])
    engine.dispose()
    again = json.loads(run(*one, "--data", str(tmp_path)).output.splitlines()[0])
    assert [one["concept"] for one in again["options"] if one["source"] == "class_error"] == [wrong]
    assert "There is no data folder" in refused(*one, "--data", str(tmp_path / "none"))


def asked_in(item: dict[str, Any]) -> str:
    facts = blake2s("+".join(item["facts"]).encode(), digest_size=8).hexdigest()
    return f"{item['family']}:{item['direction']}:{item['subject']}:{facts}"


def test_items_can_be_reported_on_instead() -> None:
    words = run("items", *COURSE, "--report").output
    assert words.startswith("family")
    assert "\nall " in words
    assert words.endswith("Rules of item writing broken: none.\n")


def test_typed_words_are_judged_with_the_reason() -> None:
    words = run("typed", "satorius", "--for", "sartorius").output
    assert words.startswith("right: Taken as sartorius; look at the spelling.\n")
    assert run("typed", "satorius", "--for", "sartorius", "--spelling", "half").output.startswith("half: ")
    listed = run("typed", "FCR", "--for", "flexor_carpi_radialis", "--course", "kinesiology").output
    assert listed.startswith("right: ")


@pytest.mark.parametrize(
    "arguments,hint",
    [
        (("satorius", "--for", "sartorus"), 'did you mean "sartorius"?'),
        (("ileum", "--for", "ilium"), 'did you mean "hip_bone.arcuate_line_of_ilium"?'),
        (("crest", "--for", "iliac_crest"), 'did you mean "hip_bone.iliac_crest"?'),
        (("x", "--for", "peroneus longus"), 'did you mean "fibularis_longus"?'),
        (("x", "--for", "ischial_words"), 'has the id "ischial_words"'),
        (("x", "--for", "qqq"), "such as sartorius, hip_bone.iliac_crest or femoral_nerve"),
        (("x", "--for", "sartorius", "--course", "kinesiolgy"), "kinesiology"),
    ],
)
def test_what_nothing_is_known_of_is_told_with_a_hint(arguments: tuple[str, ...], hint: str) -> None:
    assert hint in refused("typed", *arguments)


def test_dealing_is_measured_in_items_a_second() -> None:
    course = ("--course", "arm_and_forearm")
    words = run("bench", "items", *course, "--rounds", "30", "--times", "2").output
    assert words.count("30 items dealt in ") == 2
    assert words.count(" items/s, ") == 2
    assert words.endswith(" times as long as reading the content beside it\n")
    too_many = run("bench", "items", *course, "--rounds", "9999")
    assert too_many.exit_code == 1
    assert "Choose fewer rounds" in too_many.output


def test_the_shipped_content_has_no_findings() -> None:
    result = run("content", "check")
    assert result.exit_code == 0
    assert result.output.endswith("No findings.\n")


def test_content_that_cannot_be_used_is_told_with_its_mistakes(tmp_path: Path) -> None:
    words = refused("items", *COURSE, "--content", str(tmp_path))
    assert "content check" in words


def test_a_rehearsal_without_a_server_says_how_to_start_one(tmp_path: Path) -> None:
    assert "python3 -m quizroom" in refused("rehearse", "--data", str(tmp_path), "--port", "9")
