"""A teacher's sheet comes in whole or not at all, and every refusal names its row."""

import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from quizroom.cli import main
from quizroom.exchange.sheet import sheet_rows, write_sheet
from quizroom.exchange.sheet_import import import_sheet, write_files
from quizroom.knowledge.load import content_folder, load_content
from quizroom.knowledge.report import findings_of

HEADER = "muscle,name,part,fact_type,value,value_id,status,sources\n"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    copy = tmp_path / "content"
    shutil.copytree(content_folder(), copy)
    return copy


def sheet(*lines: str) -> str:
    return HEADER + "\n".join(lines) + "\n"


def test_an_addition_is_previewed_written_and_read_again(folder: Path) -> None:
    text = sheet("biceps_brachii,,,artery,radial recurrent artery,,variant,standring")
    result = import_sheet(text, folder)
    assert result.refused == ()
    assert '+artery = "radial_recurrent_artery"' in result.preview
    write_files(folder, result.files)
    loaded = load_content(folder)
    assert loaded.catalogue is not None
    assert findings_of(loaded) == ()
    arteries = {blood.artery: blood for blood in loaded.catalogue.muscles["biceps_brachii"].arteries}
    assert arteries["radial_recurrent_artery"].status == "variant"
    assert import_sheet(text, folder).unchanged == 1


def test_a_correction_changes_status_and_sources_in_place(folder: Path) -> None:
    text = sheet("biceps_brachii,,,artery,,brachial_artery,core,moore;standring")
    write_files(folder, import_sheet(text, folder).files)
    catalogue = load_content(folder).catalogue
    assert catalogue is not None
    found = [row for row in catalogue.muscles["biceps_brachii"].arteries if row.artery == "brachial_artery"]
    assert [row.sources for row in found] == [("moore", "standring")]


def test_a_row_can_be_removed(folder: Path) -> None:
    text = sheet("biceps_brachii,,,synonym,biceps of the arm,,remove,")
    write_files(folder, import_sheet(text, folder).files)
    catalogue = load_content(folder).catalogue
    assert catalogue is not None
    assert "biceps of the arm" not in {name.term for name in catalogue.muscles["biceps_brachii"].names}


def test_the_whole_export_comes_in_without_a_change(folder: Path) -> None:
    catalogue = load_content(folder).catalogue
    assert catalogue is not None
    stated = [row for row in sheet_rows(catalogue) if not row.fact_type.endswith("_bone")]
    stated = [row for row in stated if row.fact_type != "joint_crossed"]
    result = import_sheet(write_sheet(stated), folder)
    assert (result.refused, result.changed, result.files) == ((), 0, {})


@pytest.mark.parametrize(
    "line,words",
    [
        ("bicep_brachii,,,latin,x,,core,", 'did you mean "biceps_brachii"'),
        ("biceps_brachii,,,nervus,x,,core,", "is no fact type"),
        ("biceps_brachii,,,nerve,median nervee,,core,moore", 'did you mean "median nerve"'),
        ("biceps_brachii,,longhead,origin,x,,core,moore", 'did you mean "long_head"'),
        ("biceps_brachii,,,artery,brachial artery,,sometimes,moore", "is no status"),
        ("biceps_brachii,,,joint_crossed,wrist joint,,core,moore", "is computed"),
        ("biceps_brachii,,,action,wrist joint: flexion,,core,moore", "every_action_joint_is_crossed"),
        ("biceps_brachii,,,artery,radial recurrent artery,,core,no_such_book", "every_source_is_known"),
        ("biceps_brachii,,,artery,,,core,moore", "both empty"),
    ],
)
def test_a_bad_row_is_refused_with_its_number_and_nothing_is_given_to_write(
    folder: Path, line: str, words: str
) -> None:
    good = "biceps_brachii,,,synonym,flexor of the arm,,core,"
    result = import_sheet(sheet(good, line), folder)
    assert [refused.number for refused in result.refused] == [3]
    assert words in result.refused[0].message
    assert result.files == {}


def test_a_header_that_lacks_columns_is_refused_with_the_right_one(folder: Path) -> None:
    result = import_sheet("muscle,value\nbiceps_brachii,x\n", folder)
    assert result.refused[0].number == 1
    assert "fact_type" in result.refused[0].message


def test_the_command_shows_first_and_writes_only_when_told(folder: Path, tmp_path: Path) -> None:
    file = tmp_path / "sheet.csv"
    file.write_text(sheet("biceps_brachii,,,synonym,flexor of the arm,,core,"), encoding="utf-8")
    muscle = folder / "muscles" / "arm" / "biceps_brachii.toml"
    before = muscle.read_text("utf-8")
    arguments = ["content", "import", str(file), "--content", str(folder)]
    shown = CliRunner().invoke(main, arguments)
    assert shown.exit_code == 0
    assert "flexor of the arm" in shown.output
    assert muscle.read_text("utf-8") == before
    assert CliRunner().invoke(main, [*arguments, "--write"]).exit_code == 0
    assert "flexor of the arm" in muscle.read_text("utf-8")


def test_the_command_refuses_and_leaves_every_file_alone(folder: Path, tmp_path: Path) -> None:
    file = tmp_path / "sheet.csv"
    file.write_text(sheet("biceps_brachii,,,nerve,nerve of nowhere,,core,moore"), encoding="utf-8")
    before = {path: path.read_bytes() for path in folder.rglob("*.toml")}
    refused = CliRunner().invoke(main, ["content", "import", str(file), "--write", "--content", str(folder)])
    assert refused.exit_code == 1
    assert "sheet.csv:2" in refused.output
    assert {path: path.read_bytes() for path in folder.rglob("*.toml")} == before
