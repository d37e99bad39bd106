"""What is found of the machine and the installation."""

import resource
from pathlib import Path

import pytest

from quizroom.doctor.machine import (
    content_finding,
    machine_findings,
    open_files_finding,
    pages_finding,
    variable_findings,
)
from quizroom.settings import Settings


def test_a_misspelt_setting_is_named_with_the_right_one() -> None:
    environment = {"QUIZROOM_ADRESS": "x", "QUIZROOM_PORT": "1", "PATH": "/bin", "QUIZROOM_ZZZ": ""}
    near, strange = variable_findings(environment)
    assert near.kind == strange.kind == "remark"
    assert "QUIZROOM_ADRESS" in near.said
    assert near.remedy == "Did you mean QUIZROOM_ADDRESS?"
    assert "QUIZROOM_ZZZ" in strange.said
    assert "README" in strange.remedy


def test_too_few_open_files_are_a_fault_that_says_how_many_are_needed() -> None:
    hard = resource.getrlimit(resource.RLIMIT_NOFILE)[1]
    if hard == resource.RLIM_INFINITY:
        pytest.skip("this machine allows any number of open files")
    found = open_files_finding(hard)
    assert found.kind == "fault"
    assert f"ulimit -n {hard + 200}" in found.remedy
    assert open_files_finding(10).kind == "well"


def test_pages_that_were_not_built_are_a_fault(tmp_path: Path) -> None:
    found = pages_finding(tmp_path)
    assert (found.kind, found.said) == ("fault", "The pages have not been built.")
    assert "python3 -m quizroom" in found.remedy


def test_content_that_cannot_be_read_is_a_fault_with_its_first_mistake(tmp_path: Path) -> None:
    found = content_finding(tmp_path)
    assert found.kind == "fault"
    assert ".toml" in found.said
    assert "content check" in found.remedy


def test_a_clock_that_runs_ahead_is_remarked() -> None:
    found = [one for one in machine_findings(Settings(days_ahead=3), {}) if one.kind != "well"]
    assert [(one.kind, one.about) for one in found] == [("remark", "Clock")]
    assert "3 days ahead" in found[0].said
