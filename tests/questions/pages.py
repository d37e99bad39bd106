"""The handbook's page of each family, whose example is a golden item.

The examples are renewed with the golden files: `python -m tests.questions.golden`.
"""

import re
from pathlib import Path

import quizroom
from quizroom.questions.model import FAMILIES, Family

FAMILY_PAGES = Path(quizroom.__file__).parent / "handbook" / "families"
_EXAMPLE = re.compile(r"(?<=```text\n).*?(?=```)", re.DOTALL)
_LINES = 13
"""An example of at most so many lines reads well."""


def page_of(family: Family) -> str:
    """The page as it is written."""
    return (FAMILY_PAGES / f"{family}.md").read_text("utf-8")


def example_on(page: str) -> str:
    """The item that a page shows."""
    found = _EXAMPLE.search(page)
    return found[0] if found else ""


def renew_examples(golden: dict[str, str]) -> None:
    """Write into each page its item as it is now, or another one if it is no longer among the golden ones."""
    for family in FAMILIES:
        page = page_of(family)
        items = golden[f"families/{family}.txt"].split("\n\n")
        shown = example_on(page).split("\n")[:2]
        same = [item for item in items if shown == item.split("\n")[:2]]
        short = [item for item in items if item.count("\n") < _LINES]
        item = (same or short or items)[0].rstrip("\n") + "\n"
        before, mark, rest = page.partition("```text\n")
        after = rest.partition("```")[2]
        page = f"{before}{mark}{item}```{after}"
        (FAMILY_PAGES / f"{family}.md").write_text(page, "utf-8")
