"""The handbook says of every family what is asked, and shows an item that is really dealt."""

import re
from pathlib import Path
from typing import get_args

import pytest

from quizroom.knowledge.model import Course
from quizroom.questions.model import FAMILIES, Family, Spelling
from tests.questions.golden import FOLDER
from tests.questions.pages import FAMILY_PAGES, example_on, page_of

HANDBOOK = FAMILY_PAGES.parent
HEADINGS = (
    "What is asked",
    "Directions and formats",
    "Wrong options",
    "What is never asked",
    "Example",
    "Marking",
)
_LINK = re.compile(r"\]\(([^)#:]+\.md)\)")


def test_every_family_has_its_page_and_every_page_a_family() -> None:
    assert {page.stem for page in FAMILY_PAGES.glob("*.md")} == set(FAMILIES)


@pytest.mark.parametrize("family", FAMILIES)
def test_a_page_tells_all_that_a_teacher_may_ask(family: Family) -> None:
    page = page_of(family)
    assert tuple(re.findall(r"^## (.+)$", page, re.MULTILINE)) == HEADINGS
    assert all(len(part.split()) > 5 for part in re.split(r"^##.+$", page, flags=re.MULTILINE)[1:])


@pytest.mark.parametrize("family", FAMILIES)
def test_the_example_of_a_page_is_a_golden_item(family: Family) -> None:
    golden = (FOLDER / "families" / f"{family}.txt").read_text("utf-8")
    example = example_on(page_of(family))
    assert example.startswith(f"{family} / ")
    assert example in golden


@pytest.mark.parametrize("page", sorted(HANDBOOK.rglob("*.md")), ids=lambda page: page.name)
def test_links_of_the_handbook_lead_somewhere(page: Path) -> None:
    assert [
        link for link in _LINK.findall(page.read_text("utf-8")) if not (page.parent / link).exists()
    ] == []


def test_the_index_leads_to_every_page() -> None:
    index = HANDBOOK / "README.md"
    linked = {(HANDBOOK / link).resolve() for link in _LINK.findall(index.read_text("utf-8"))}
    left_out = {page.resolve() for page in HANDBOOK.rglob("*.md")} - linked - {index.resolve()}
    assert not left_out, "name each new page in quizroom/handbook/README.md"


def test_every_wish_for_typed_answers_is_told_with_its_values() -> None:
    page = (HANDBOOK / "typed_answers.md").read_text("utf-8")
    for wish in ("spelling", "specificity", "abbreviations"):
        assert wish in Course.__dataclass_fields__
        assert f"`{wish}`" in page
    assert all(page.count(f'`"{value}"`') == 2 for value in get_args(Spelling))
