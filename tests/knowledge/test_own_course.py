"""A teacher's own course list over the shipped content: every mistake is explained, with what to do."""

from pathlib import Path

import pytest

from quizroom.knowledge.finding import Finding
from quizroom.knowledge.load import content_folder, load_content
from quizroom.knowledge.report import findings_of
from tests.knowledge.files import content_report

HEAD = 'title = "Mine"\n'
MUSCLES = 'muscles = ["biceps_brachii", "brachialis"]\n'
FAMILIES = 'families = ["origin", "nerve"]\n'
TONGUE = 'muscles = ["hyoglossus", "styloglossus"]\n'
MISTAKES = [
    (MUSCLES.replace("brachii", "brachi") + FAMILIES, "muscles", "course_muscles_exist", '"biceps_brachii"'),
    (MUSCLES + 'families = ["origins"]\n', "families", "course_families_exist", '"origin"'),
    ("muscles = []\n" + FAMILIES, "muscles", "course_is_not_empty", "list each of the muscles once"),
    (MUSCLES + "families = []\n", "families", "course_is_not_empty", "list each of the families once"),
    (
        MUSCLES.replace("]", ', "brachialis"]') + FAMILIES,
        "muscles",
        "course_is_not_empty",
        "list each of the muscles once",
    ),
    (TONGUE + 'families = ["nerve", "root"]\n', "families", "course_families_have_facts", "drop the family"),
    (
        MUSCLES + FAMILIES + 'separate_parts = ["triceps_brachii"]\n',
        "separate_parts",
        "course_muscles_exist",
        "brachi",
    ),
    (
        MUSCLES + FAMILIES + 'abbreviations = ["FRC"]\n',
        "abbreviations",
        "preferred_terms_are_known",
        '"FCR"',
    ),
    (
        MUSCLES + FAMILIES + '[[house_rules]]\nfact = "brachialis/nerve/-/radial"\nruling = "key"\n',
        "house_rules",
        "house_rules_name_facts",
        '"brachialis/nerve/-/radial_nerve"',
    ),
    (
        MUSCLES + FAMILIES + 'spelling = "strict"\n',
        "spelling",
        "entry_is_well_formed",
        "'exact', 'half' or 'accept'",
    ),
    (MUSCLES + FAMILIES + "familys = []\n", "familys", "entry_is_well_formed", '"families"'),
    (FAMILIES, "muscles", "entry_is_well_formed", "add `muscles`"),
    (MUSCLES + "families = [\n", "", "entry_is_well_formed", "mend what stands at the place named"),
]


def own_list(folder: Path, name: str, text: str) -> Path:
    path = folder / f"{name}.toml"
    path.write_text(HEAD + text, encoding="utf-8")
    return path.resolve()


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[Finding]]:
    """What is found in each list with a mistake, all read in one go."""
    folder = tmp_path_factory.mktemp("lists")
    paths = [own_list(folder, f"list_{number}", text) for number, (text, *_) in enumerate(MISTAKES)]
    findings = findings_of(load_content(content_folder(), paths))
    return {path.stem: [one for one in findings if one.file == str(path)] for path in paths}


@pytest.mark.parametrize("number", range(len(MISTAKES)), ids=lambda number: MISTAKES[number][2])
def test_a_mistake_is_told_with_its_place_and_remedy(told: dict[str, list[Finding]], number: int) -> None:
    _, key, rule, remedy = MISTAKES[number]
    (finding,) = told[f"list_{number}"]
    assert (finding.key, finding.rule) == (key, rule)
    assert remedy in finding.remedy


def test_a_list_without_mistakes_is_read_beside_those_that_are_shipped(tmp_path: Path) -> None:
    shipped = len(list((content_folder() / "courses").glob("*.toml")))
    said = content_report(content_folder(), (own_list(tmp_path, "my_course", MUSCLES + FAMILIES),))
    assert f"{shipped + 1} courses" in said
    assert said.endswith("No findings.")
