"""No reading of the outside tables' words lies idle, and none means what does not exist."""

import re
from fnmatch import filter as fitting
from fnmatch import fnmatchcase

import pytest

from tests.reference.rows import TABLES, every_row, targets, words
from tests.shipped import content


def test_every_muscle_and_part_that_is_meant_exists() -> None:
    rows = [one for table in TABLES for one in every_row(table)]
    meant = {target for one in rows for target in targets(one)}
    ours = {(muscle.id, part) for muscle in content().muscles.values() for part in _parts(muscle.id)}
    assert meant <= ours


def test_every_name_is_one_that_a_table_has() -> None:
    rows = [one for table in TABLES for one in every_row(table)]
    assert set(words("names")) <= {
        name for one in rows for name in (one.muscle, f"{one.muscle} / {one.part}")
    }


@pytest.mark.parametrize("table, ids", [("bones", content().bones), ("landmarks", content().landmarks)])
def test_every_place_is_named_somewhere_and_exists(table: str, ids: dict[str, object]) -> None:
    rows = [one for name in ("openstax_ap2e", "uberon") for one in every_row(name)]
    texts = {text.lower() for one in rows for text in (one.value, one.note)}
    for pattern, globs in words("places")[table].items():
        assert any(re.search(pattern, text) for text in texts), pattern
        assert all(fitting(ids, glob) for glob in globs), globs


@pytest.mark.parametrize("table, ids", [("bodies", content().bones), ("joints", content().joints)])
def test_every_word_of_the_models_is_used_and_has_its_meaning(table: str, ids: dict[str, object]) -> None:
    rows = [one for name in ("myosim_moment_arms", "opensim_neck") for one in every_row(name)]
    used = {one.value.partition(": ")[0] for one in rows}
    for key, globs in words("models")[table].items():
        assert any(fnmatchcase(word, key) or word == key for word in used), key
        assert all(fitting(ids, glob) for glob in globs), globs


def _parts(muscle: str) -> list[str]:
    return ["", *(part.id for part in content().muscles[muscle].parts)]
