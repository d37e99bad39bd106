"""Reading a content folder in which files are doubled, misplaced or of another form."""

from pathlib import Path

import pytest

from quizroom.knowledge.load import load_content
from tests.knowledge.files import FILES, one_finding, write


def test_an_id_in_two_files_is_told(tmp_path: Path) -> None:
    folder = write(tmp_path, muscles__leg__brachialis=FILES["muscles/arm/brachialis.toml"])
    finding = one_finding(folder)
    assert "muscles/arm/brachialis.toml" in finding.message


def test_a_landmark_in_two_files_is_told(tmp_path: Path) -> None:
    doubled = '[ulna.coronoid_process]\nname = "coronoid"\nkind = "process"\n'
    assert one_finding(write(tmp_path, landmarks__other=doubled)).file == "landmarks/other.toml"


@pytest.mark.parametrize("name", ["muscls", "muscles__brachialis", "landmarks__arm__more"])
def test_a_file_that_nothing_reads_is_told(tmp_path: Path, name: str) -> None:
    assert "nothing reads" in one_finding(write(tmp_path, **{name: "x = 1\n"})).message


@pytest.mark.parametrize("text", ["elbow = 1\n", "elbow = [1]\n", "[[elbow]]\nname = 1\n"])
def test_an_entry_that_is_no_table_is_told(tmp_path: Path, text: str) -> None:
    assert load_content(write(tmp_path, joints=text)).findings[0].file == "joints.toml"


@pytest.mark.parametrize(
    "text", ["exempt = 1\n", "[exempts]\n", "[[exempt]]\nrule = 1\n", "x = 2031-09-01\n"]
)
def test_exceptions_of_another_form_are_told(tmp_path: Path, text: str) -> None:
    assert load_content(write(tmp_path, exceptions=text)).findings


def test_landmarks_of_another_form_are_told(tmp_path: Path) -> None:
    folder = write(tmp_path, landmarks__arm="humerus = 3\n[ulna]\ntip = 4\n")
    keys = {finding.key for finding in load_content(folder).findings}
    assert {"humerus", "ulna.tip"} <= keys


def test_a_file_that_cannot_be_opened_is_told(tmp_path: Path) -> None:
    folder = write(tmp_path, courses__arm=None)
    (folder / "courses" / "arm.toml").mkdir(parents=True)
    assert "cannot be opened" in one_finding(folder).message
