"""The guide in content/README.md, followed step by step: a muscle that is missing is added to a copy.

Anconeus epitrochlearis, found in about one arm in ten: values from memory, common practice, no source.
"""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.compose import record_of
from quizroom.knowledge.load import content_folder, load_content
from quizroom.knowledge.report import findings_of, report
from quizroom.questions.deck import items_of
from quizroom.questions.model import Family
from quizroom.questions.syllabus import syllabus_of

MUSCLE = "anconeus_epitrochlearis"
LANDMARK = """
[ulna.medial_border_of_olecranon]
name = "medial border of the olecranon"
label = "medial border of the olecranon"
kind = "border"
position = "proximal"
within = ["ulna.olecranon"]
"""
RECORD = """
name = "anconeus epitrochlearis"
latin = "musculus epitrochleoanconeus"
meaning = "the elbow muscle at the epitrochlea, an old word for the medial epicondyle"
region = "forearm"
compartment = "forearm_posterior"
layer = "superficial"
sources = ["common_practice"]

[[names]]
term = "epitrochleoanconeus"
kind = "synonym"

[[names]]
term = "AE"
kind = "abbreviation"
exact = false

[[origins]]
site = "humerus.medial_epicondyle"
detail = "posterior side"
sources = ["common_practice"]

[[insertions]]
site = "ulna.medial_border_of_olecranon"
sources = ["common_practice"]

[[actions]]
joint = "elbow"
movement = "extension"
role = "assistant"
condition = "where the muscle is present"
sources = ["common_practice"]

[[nerves]]
nerve = "ulnar_nerve"
roots = ["C8", "T1"]
main = ["C8"]
sources = ["common_practice"]

[[nerves]]
nerve = "radial_nerve"
roots = ["C7", "C8"]
status = "minority"
sources = ["common_practice"]

[[arteries]]
artery = "superior_ulnar_collateral_artery"
sources = ["common_practice"]

[[notes]]
text = "Present in about one arm in ten."
kind = "teaching"
sources = ["common_practice"]

[[notes]]
text = "It roofs the cubital tunnel and may press on the ulnar nerve."
kind = "clinical"
sources = ["common_practice"]

[[differ]]
about = "nerves"
text = "A few give the radial nerve, as for the anconeus."
sources = ["common_practice"]

[[differ]]
about = "roots"
text = "C5 and C6; a few add C7."
segments = ["C7"]
sources = ["common_practice"]
"""
GUIDE = (content_folder() / "README.md").read_text("utf-8")
STEPS = re.findall(r"^\d\. .*(?:\n   .*)*", GUIDE.split("## Add a muscle")[1].split("##")[0], re.MULTILINE)
NO_USE = {"prime", "part", "[[parts]]", "synonyms", "[ids]", "bones", "access"}
"""Words of the guide for which this muscle has no use."""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A copy of the content with the muscle added to it, as the guide says."""
    copy = Path(shutil.copytree(content_folder(), tmp_path_factory.mktemp("copy") / "content"))
    landmarks = copy / "landmarks" / "forearm.toml"
    landmarks.write_text(landmarks.read_text("utf-8") + LANDMARK, encoding="utf-8")
    (copy / "muscles" / "forearm" / f"{MUSCLE}.toml").write_text(RECORD.lstrip(), encoding="utf-8")
    for course in ("regional_gross_anatomy", "arm_and_forearm"):
        listed = copy / "courses" / f"{course}.toml"
        text = listed.read_text("utf-8").replace("muscles = [", f'muscles = [\n    "{MUSCLE}",', 1)
        listed.write_text(text, encoding="utf-8")
    return copy


@pytest.fixture(scope="module")
def catalogue(folder: Path) -> Catalogue:
    """What is read from the copy; the check must have nothing to say."""
    loaded = load_content(folder)
    assert findings_of(loaded) == (), report(loaded, findings_of(loaded))
    assert loaded.catalogue is not None
    return loaded.catalogue


def keys_named() -> Iterator[str]:
    """The keys and tables that the steps about the file name in backticks."""
    for step in STEPS[1:7]:
        for word in re.findall(r"`([^`]+)`", step):
            yield from re.findall(r"\[\[\w+\]\]|\[ids\]|^\w+(?= =)|^[a-z]+$", word)


def test_the_guide_is_one_page_of_eight_steps() -> None:
    assert len(STEPS) == 8
    assert len("\n".join(STEPS).splitlines()) < 40


def test_the_muscle_is_written_with_every_key_that_the_guide_names() -> None:
    named = set(keys_named())
    assert NO_USE | {"name", "site", "role", "main", "status", "[[differ]]"} <= named
    missing = {key for key in named - NO_USE if not re.search(re.escape(key), RECORD + LANDMARK)}
    assert missing == set()


def test_it_has_a_record(catalogue: Catalogue) -> None:
    record = record_of(catalogue, MUSCLE)
    assert record.name == "anconeus epitrochlearis"
    assert record.heads


@pytest.mark.parametrize("family", ["origin", "insertion", "nerve"])
def test_items_about_it_are_dealt(catalogue: Catalogue, family: Family) -> None:
    syllabus = syllabus_of(catalogue, catalogue.courses["arm_and_forearm"])
    assert any(MUSCLE in item.muscles for item in items_of(syllabus, family, 1))
