"""What a teacher writes into a course list of their own decides how typed answers are marked."""

from pathlib import Path

import pytest

from quizroom.knowledge.load import content_folder, load_content
from quizroom.questions.syllabus import Syllabus, syllabus_of
from quizroom.questions.typed import verdict
from quizroom.questions.typed_terms import plain_terms

LIST = """
title = "Mine"
muscles = ["biceps_brachii", "flexor_carpi_radialis", "sartorius"]
families = ["origin", "nerve"]
"""


def own_syllabus(folder: Path, wishes: str) -> Syllabus:
    path = folder / "mine.toml"
    path.write_text(LIST + wishes, encoding="utf-8")
    loaded = load_content(content_folder(), [path])
    assert loaded.catalogue is not None, loaded.findings
    return syllabus_of(loaded.catalogue, loaded.catalogue.courses["mine"])


@pytest.mark.parametrize(
    "wishes,text,concept,kind",
    [
        ("", "satorius", "sartorius", "right"),
        ('spelling = "half"', "satorius", "sartorius", "half"),
        ('spelling = "exact"', "satorius", "sartorius", "wrong"),
        ("", "biceps brachii", "biceps_brachii/long_head", "wrong"),
        ('specificity = "half"', "biceps brachii", "biceps_brachii/long_head", "half"),
        ('specificity = "accept"', "biceps brachii", "biceps_brachii/long_head", "right"),
        ("", "FCR", "flexor_carpi_radialis", "wrong"),
        ('abbreviations = ["FCR"]', "FCR", "flexor_carpi_radialis", "right"),
    ],
)
def test_the_wishes_of_a_list_decide(tmp_path: Path, wishes: str, text: str, concept: str, kind: str) -> None:
    syllabus = own_syllabus(tmp_path, wishes)
    assert verdict(plain_terms(syllabus, concept, text), text).kind == kind
