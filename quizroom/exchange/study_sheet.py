"""A study sheet as a PDF: blanks on the front of each sheet, the answers on its back."""

from collections.abc import Sequence
from dataclasses import asdict
from pathlib import Path
from typing import Literal, get_args

import orjson

from quizroom.exchange.study_rows import StudyEntry

Paper = Literal["a4", "us-letter"]
"""ISO 216 A4, or ANSI Letter by the name that the typesetter has for it."""

PAPERS: tuple[Paper, ...] = get_args(Paper)
TEMPLATE = Path(__file__).with_name("study_sheet.typ")
PLAIN_TITLE = "Missed items"
CAUTION = (
    "For teaching and self-study. Anatomy varies; your course's own list comes first. "
    "Not for diagnosis, treatment, surgery or injection-site decisions."
)


class NothingToPrint(ValueError):
    """A sheet without entries has nothing on it."""


def study_sheet(entries: Sequence[StudyEntry], *, title: str, paper: Paper) -> bytes:
    """The sheet as a tagged PDF (PDF/UA-1, ISO 14289-1), for printing on both sides.

    Odd pages hold blanks, even pages the same page filled in.

    Raises:
        NothingToPrint: there are no entries.
    """
    if not entries:
        raise NothingToPrint("Nothing was missed, so there is nothing to print.")
    import typst  # noqa: PLC0415 - large; only who prints pays

    try:
        return _typeset(entries, title, paper)
    except typst.TypstError:
        # A title in a script for which this machine has no font would print as boxes: do without it.
        return _typeset(entries, PLAIN_TITLE, paper)


def _typeset(entries: Sequence[StudyEntry], title: str, paper: Paper) -> bytes:
    import typst  # noqa: PLC0415 - likewise

    sheet = {
        "title": title,
        "paper": paper,
        "caution": CAUTION,
        "entries": [asdict(entry) for entry in entries],
    }
    pdf = typst.compile(
        TEMPLATE,
        format="pdf",
        sys_inputs={"sheet": orjson.dumps(sheet).decode()},
        pdf_standards=["ua-1"],
    )
    if not isinstance(pdf, bytes):
        raise TypeError("the typesetter gave no single PDF")
    return pdf
