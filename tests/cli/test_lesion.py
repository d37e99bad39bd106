"""`quizroom lesion`: what a cut takes away, by whatever name the nerve is called."""

import json

import pytest
from click.testing import CliRunner, Result

from quizroom.cli import main
from quizroom.knowledge.anatomy.lesion import EXPECTATION


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, ["lesion", *arguments])


def test_what_is_lost_and_weakened_is_told_with_the_movements_and_the_caution() -> None:
    words = run("axillary_nerve", "--at", "at_surgical_neck").output
    assert words.startswith("Lost: deltoid, teres minor\nWeakened: none\nSpared beside these: ")
    spared = words.splitlines()[2]
    assert "supraspinatus" in spared  # the trap of row U7 of tests/reference/lesion_rows.py
    assert "deltoid" not in spared
    assert run("axillary_nerve", "--at", "surgical neck").output == words
    assert "  abduction at the shoulder (glenohumeral) joint: weakened\n" in words
    assert words.endswith(f"{EXPECTATION}\n")


@pytest.mark.parametrize("name", ["c5", "C5", "C5 spinal nerve"])
def test_a_root_may_be_cut_by_id_or_name(name: str) -> None:
    words = run(name).output
    assert words.startswith("Lost: none\nWeakened: ")
    assert "supraspinatus" in words


@pytest.mark.parametrize("name", ["common peroneal nerve", "upper trunk", "posterior_cord"])
def test_nerves_trunks_and_cords_may_be_cut(name: str) -> None:
    assert not run(name).output.startswith("Lost: none")


def test_of_a_muscle_with_two_nerves_the_part_is_named() -> None:
    lost, _, spared, *_ = run("obturator_nerve").output.splitlines()  # row L2
    assert "adductor part of adductor magnus" in lost
    assert "hamstring part of adductor magnus" in spared
    assert "pectineus" in spared


def test_machines_get_json() -> None:
    found = json.loads(run("long_thoracic_nerve", "--format", "json").output)
    assert "trapezius/descending_part" in found["spared"]
    assert found["muscles"] == [{"muscle": "serratus_anterior", "part": "", "damage": "lost"}]


@pytest.mark.parametrize(
    "arguments,hint", [(("axilary_nerve",), "axillary_nerve"), (("radial_nerve", "--at", "axila"), "axilla")]
)
def test_an_unknown_nerve_or_level_is_told_with_a_hint(arguments: tuple[str, ...], hint: str) -> None:
    refused = run(*arguments)
    assert refused.exit_code == 1
    assert hint in refused.output
