"""Reading the content folder."""

from pathlib import Path

import pytest

from quizroom.knowledge.load import content_folder, load_content
from quizroom.knowledge.report import findings_of
from tests.knowledge.files import FILES, brachialis, one_finding, write


def test_a_faultless_folder_becomes_a_catalogue(tmp_path: Path) -> None:
    loaded = load_content(write(tmp_path))
    assert findings_of(loaded) == ()
    assert loaded.catalogue is not None
    assert loaded.catalogue is loaded.draft
    assert list(loaded.catalogue.muscles) == ["brachialis"]
    assert loaded.catalogue.retired == {"muscles": ("brachialis_internus",)}


def test_what_a_landmark_need_not_say_is_filled_in(tmp_path: Path) -> None:
    catalogue = load_content(write(tmp_path)).catalogue
    assert catalogue is not None
    coronoid = catalogue.landmarks["ulna.coronoid_process"]
    assert (coronoid.bones, coronoid.label) == (("ulna",), "coronoid process of the ulna")
    assert catalogue.landmarks["ribs.ribs_3_5"].label == "ribs 3-5, near their cartilages"
    assert catalogue.landmarks["soft.septum"].bones == ("humerus",)


def test_preferred_terms_may_be_a_table(tmp_path: Path) -> None:
    course = FILES["courses/arm.toml"] + '[preferred]\nelbow = "elbow joint"\n'
    catalogue = load_content(write(tmp_path, courses__arm=course)).catalogue
    assert catalogue is not None
    assert catalogue.courses["arm"].preferred == (("elbow", "elbow joint"),)


def test_a_syntax_error_gives_its_line(tmp_path: Path) -> None:
    finding = one_finding(write(tmp_path, muscles__arm__brachialis='name = "x"\nlatin = \n'))
    assert (finding.file, finding.line) == ("muscles/arm/brachialis.toml", 2)


@pytest.mark.parametrize(
    "old, new, key, told",
    [
        ('role = "prime"', 'role = "chief"', "actions[0].role", "'prime' or 'assistant'"),
        ('role = "prime"', 'roll = "prime"', "actions[0].roll", '"role"'),
        ('layer = "deep"', "layer = 3", "layer", "text in quotes"),
        ('roots = ["C5"]', 'roots = "C5"', "nerves[0].roots", "a list"),
        ('layer = "deep"', 'layer = "deep"\nid = "x"', "id (taken from the key or file name)", "known"),
        ('meaning = "of the arm"\n', "", "meaning", "add `meaning`"),
    ],
)
def test_a_mistake_of_form_names_key_and_remedy(
    tmp_path: Path, old: str, new: str, key: str, told: str
) -> None:
    findings = load_content(write(tmp_path, muscles__arm__brachialis=brachialis(old, new))).findings
    assert told in {finding.key: finding.remedy for finding in findings}[key]


def test_all_mistakes_of_all_files_are_told_at_once(tmp_path: Path) -> None:
    muscle = brachialis('role = "prime"', "role = 1").replace('layer = "deep"', "layer = 2")
    folder = write(tmp_path, muscles__arm__brachialis=muscle, courses__arm="title = []", bones="[x")
    files = [finding.file for finding in load_content(folder).findings]
    assert files.count("muscles/arm/brachialis.toml") == 2
    assert {"courses/arm.toml", "bones.toml"} <= set(files)


def test_rules_are_checked_along_with_mistakes_of_form(tmp_path: Path) -> None:
    course = 'title = 3\nmuscles = ["brachialis"]\nfamilies = ["origin"]\n'
    muscle = brachialis('movement = "flexion"', 'movement = "flexing"')
    folder = write(tmp_path, courses__arm=course, muscles__arm__brachialis=muscle)
    rules = {finding.rule for finding in findings_of(load_content(folder))}
    assert {"entry_is_well_formed", "every_joint_and_movement_is_known"} <= rules


def test_a_muscle_that_cannot_be_read_is_not_called_unknown(tmp_path: Path) -> None:
    loaded = load_content(write(tmp_path, muscles__arm__brachialis="name = "))
    assert [finding.rule for finding in findings_of(loaded)] == ["entry_is_well_formed"]


def test_a_missing_vocabulary_file_is_told_and_stops_the_rules(tmp_path: Path) -> None:
    loaded = load_content(write(tmp_path, joints=None))
    assert loaded.draft is None
    assert [finding.file for finding in findings_of(loaded)] == ["joints.toml"]


def test_a_folder_that_is_not_there_is_told(tmp_path: Path) -> None:
    loaded = load_content(tmp_path / "nowhere")
    assert loaded.catalogue is None
    assert "bones.toml" in {finding.file for finding in loaded.findings}


def test_text_that_is_not_utf8_is_told(tmp_path: Path) -> None:
    finding = one_finding(write(tmp_path, courses__arm='title = "Übung"'.encode("latin-1")))
    assert "UTF-8" in finding.remedy


def test_a_course_list_from_elsewhere_is_read_too(tmp_path: Path) -> None:
    own = tmp_path / "mine.toml"
    own.write_text('title = "Mine"\nmuscles = ["brachialys"]\nfamilies = ["origin"]\n')
    loaded = load_content(write(tmp_path / "content"), [own])
    (finding,) = findings_of(loaded)
    assert (finding.rule, finding.file, finding.key) == ("course_muscles_exist", str(own), "muscles")
    assert '"brachialis"' in finding.remedy


def test_a_course_list_of_the_folder_is_read_once(tmp_path: Path) -> None:
    folder = write(tmp_path)
    assert load_content(folder, [folder / "courses" / "arm.toml"]).findings == ()


def test_the_content_comes_with_the_program() -> None:
    assert (content_folder() / "bones.toml").is_file()
