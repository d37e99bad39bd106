"""The study sheet, set and read back by another library."""

import io
from typing import Any

import pypdf
import pytest

from quizroom.exchange.study_rows import StudyEntry, study_entry
from quizroom.exchange.study_sheet import PAPERS, NothingToPrint, Paper, study_sheet
from quizroom.knowledge.compose import record_of
from tests.shipped import content

SOME = ("biceps_brachii", "brachialis", "adductor_magnus", "gastrocnemius", "masseter")

# ISO 216 A4 is 210 x 297 mm, ANSI/ASME Y14.1 Letter 8.5 x 11 inches; a point is 1/72 inch.
POINTS: dict[Paper, tuple[float, float]] = {
    "a4": (210 / 25.4 * 72, 297 / 25.4 * 72),
    "us-letter": (8.5 * 72, 11 * 72),
}


def entries() -> list[StudyEntry]:
    return [study_entry(record_of(content(), muscle), frozenset({"nerve"})) for muscle in SOME]


def read(pdf: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(io.BytesIO(pdf))


def words(page: pypdf.PageObject) -> str:
    # A long answer is hyphenated and broken; only what stands within a line can be looked for.
    return " ".join(page.extract_text().split())


@pytest.mark.parametrize("paper", PAPERS)
def test_every_page_has_the_size_of_the_paper(paper: Paper) -> None:
    pages = read(study_sheet(entries(), title="Missed items", paper=paper)).pages
    for page in pages:
        assert (float(page.mediabox.width), float(page.mediabox.height)) == pytest.approx(
            POINTS[paper], abs=0.1
        )


@pytest.mark.parametrize("paper", PAPERS)
def test_the_front_asks_and_only_the_back_tells(paper: Paper) -> None:
    pages = read(study_sheet(entries(), title="Missed items", paper=paper)).pages
    assert len(pages) % 2 == 0
    for front, back in zip(pages[0::2], pages[1::2], strict=True):
        assert "to fill in" in words(front)
        assert "answers" in words(back)
    fronts = " ".join(words(page) for page in pages[0::2])
    backs = " ".join(words(page) for page in pages[1::2])
    for answer in (
        "musculocutaneous nerve",
        "radial tuberosity",
        "supraglenoid tubercle",
        "C6",
        "masseteric nerve",
    ):
        assert answer in backs
        assert answer not in fronts


def test_both_sides_hold_the_same_rows_in_the_same_places() -> None:
    pages = read(study_sheet(entries(), title="Missed items", paper="a4")).pages
    for front, back in zip(pages[0::2], pages[1::2], strict=True):
        assert _places(front) == _places(back)


def test_every_muscle_stands_on_the_sheet_and_missed_rows_are_marked() -> None:
    pages = read(study_sheet(entries(), title="Missed items", paper="a4")).pages
    fronts = " ".join(words(page) for page in pages[0::2])
    assert all(entry.name in fronts for entry in entries())
    assert fronts.count("Nerve · missed") == len(SOME)
    assert "Artery · missed" not in fronts


def test_the_whole_body_fits_on_paper() -> None:
    everything = [study_entry(record_of(content(), muscle), frozenset()) for muscle in content().muscles]
    pages = read(study_sheet(everything, title="Everything", paper="us-letter")).pages
    backs = " ".join(words(page) for page in pages[1::2])
    assert all(entry.name in backs for entry in everything)


def test_a_reader_is_told_language_title_and_structure() -> None:
    # ISO 14289-1 (PDF/UA-1) asks for a tagged file with a language and a title that is shown.
    root: Any = read(study_sheet(entries(), title="Missed items", paper="a4")).trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"] == True  # noqa: E712 - a value of the file, not a bool
    assert root["/Lang"] == "en"
    assert root["/ViewerPreferences"]["/DisplayDocTitle"] == True  # noqa: E712 - likewise


def test_a_title_without_a_font_does_not_lose_the_sheet() -> None:
    # Linear A, for which hardly any machine has a font.
    pages = read(study_sheet(entries(), title="\U00010600\U00010601", paper="a4")).pages
    assert "biceps brachii" in words(pages[0])


def test_markup_in_a_title_is_only_words() -> None:
    pages = read(study_sheet(entries(), title='#panic("no") *bold* "quoted"', paper="a4")).pages
    assert '#panic("no") *bold* "quoted"' in words(pages[0])


def test_nothing_to_print_is_said() -> None:
    with pytest.raises(NothingToPrint, match="Nothing was missed"):
        study_sheet([], title="Missed items", paper="a4")


def test_the_compartment_is_asked_and_not_told_in_the_title() -> None:
    entry = study_entry(record_of(content(), "brachialis"), frozenset())
    (asked,) = [row for row in entry.rows if row.kind == "compartment"]
    assert asked.answer
    assert asked.answer not in entry.place


def _places(page: pypdf.PageObject) -> list[tuple[int, int]]:
    """Where the labels in the left column start, in points."""
    found: set[tuple[int, int]] = set()

    def note(text: str, _cm: object, matrix: list[float], _font: object, _size: object) -> None:
        # The left margin is 18 mm = 51 points; the column of answers starts far to the right of it.
        if text.strip() and 50 <= matrix[4] <= 53 and 70 < matrix[5] < 780:
            found.add((round(matrix[4]), round(matrix[5])))

    page.extract_text(visitor_text=note)
    return sorted(found)
