"""What the documents promise to name, they name."""

from pathlib import Path
from typing import get_args

import click
import pytest

from quizroom.cli import main
from quizroom.knowledge.checks import rules_by_name
from quizroom.protocol import messages
from quizroom.protocol.sentences import SENTENCES
from quizroom.questions.model import FAMILIES
from quizroom.settings import PREFIX, Settings

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text("utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")
CONTENT = (ROOT / "content" / "README.md").read_text("utf-8")


def commands(group: click.Group, before: str = "") -> list[str]:
    found: list[str] = []
    for name, command in group.commands.items():
        found += commands(command, f"{name} ") if isinstance(command, click.Group) else [before + name]
    return found


def message_types() -> list[str]:
    union = get_args(messages.ClientMessage)[0]
    return [word for kind in get_args(union) for word in get_args(kind.__annotations__["type"])]


@pytest.mark.parametrize("command", commands(main))
def test_every_command_is_in_the_readme(command: str) -> None:
    assert f"`{command}`" in README


@pytest.mark.parametrize("setting", sorted(Settings.model_fields))
def test_every_setting_is_in_the_readme(setting: str) -> None:
    assert f"`{PREFIX}{setting.upper()}`" in README


@pytest.mark.parametrize("code", sorted(SENTENCES))
def test_every_refusal_is_in_the_contributor_guide(code: str) -> None:
    assert f"`{code}`" in DEVELOPERS


@pytest.mark.parametrize("word", message_types())
def test_every_message_is_in_the_contributor_guide(word: str) -> None:
    assert f"`{word}`" in DEVELOPERS


@pytest.mark.parametrize("rule", sorted(rules_by_name()))
def test_every_content_rule_is_in_the_content_guide(rule: str) -> None:
    assert f"`{rule}`" in CONTENT


@pytest.mark.parametrize("family", FAMILIES)
def test_every_family_has_its_file(family: str) -> None:
    assert (ROOT / "quizroom" / "questions" / "families" / f"{family}.py").exists()


def test_the_readme_gives_the_two_commands() -> None:
    assert "\npython3 -m quizroom\n" in README
    assert "\npython3 -m tests\n" in README


def test_every_picture_of_the_readme_is_there() -> None:
    pictures = [part.split(")")[0] for part in README.split("](")[1:] if part.split(")")[0].endswith(".png")]
    assert pictures
    assert [picture for picture in pictures if not (ROOT / picture).exists()] == []
