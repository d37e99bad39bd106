"""What may be wrong with a row of a roster, and what looks odd about all of them."""

import re
import unicodedata
from collections.abc import Iterator, Sequence

from quizroom.service.roster_ports import RosterRow, folded_id

LONGEST_ID = 64
LONGEST_NAME = 120
LONGEST_SECTION = 60
ROUNDED = re.compile(r"\d([.,]\d+)?E\+\d+", re.IGNORECASE)
"""What spreadsheets make of a long number."""
CUT_OFF = (
    "Ids have from {least} to {most} figures. If yours all have {most}, a spreadsheet has cut off leading "
    "zeros: format the column as text and save the file again."
)
DIRECTIONS = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
"""They turn the order of the letters around them (Unicode Standard Annex 9, 2.1 to 2.4)."""


def faults_of(row: RosterRow) -> str:
    """The first thing that is wrong with a row, as a sentence that says what to do; empty if nothing is."""
    return next(_faults(row), "")


def remarks_on(rows: Sequence[RosterRow]) -> tuple[str, ...]:
    """What looks odd although each row by itself is good."""
    lengths = {len(row.id) for row in rows}
    if len(rows) > 1 and len(lengths) > 1 and all(row.id.isdecimal() for row in rows):
        return (CUT_OFF.format(least=min(lengths), most=max(lengths)),)
    return ()


def _faults(row: RosterRow) -> Iterator[str]:
    if not row.id:
        yield "the id is missing. Every row needs one; it is how players say who they are."
    if not row.name:
        yield "the name is empty. Write one, or leave the line out."
    if max(len(row.id), len(folded_id(row.id))) > LONGEST_ID:
        yield f"the id has more than {LONGEST_ID} characters. Shorten it."
    if len(row.name) > LONGEST_NAME:
        yield f"the name has more than {LONGEST_NAME} characters. Shorten it."
    if len(row.section) > LONGEST_SECTION:
        yield f"the section has more than {LONGEST_SECTION} characters. Shorten it."
    if ROUNDED.fullmatch(row.id):
        yield f'a spreadsheet has rounded the id to "{row.id}". Format the column as text and try again.'
    if any(_hidden(letter) for letter in f"{row.id}{row.name}{row.section}"):
        yield "it holds a character that cannot be seen. Type the cells anew."
    if row.id and not folded_id(row.id).isprintable():
        yield "the id holds a character that cannot be seen. Type it anew."


def _hidden(letter: str) -> bool:
    return letter in DIRECTIONS or unicodedata.category(letter) == "Cc"
