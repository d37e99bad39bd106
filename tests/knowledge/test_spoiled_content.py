"""Whatever is done to the content files, reading and checking them tells findings and never fails."""

import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from quizroom.knowledge.load import load_content
from quizroom.knowledge.report import findings_of, report
from tests.knowledge.files import FILES, write

JUNK = [
    "",
    "x",
    "[",
    "x = 1",
    "[x]",
    "[[parts]]",
    'id = "x"',
    "name = 1",
    "links = [[]]",
    'parents = ["c5"]',
    "\0",
]
names = st.sampled_from(sorted(FILES))


@st.composite
def spoiled(draw: st.DrawFn) -> dict[str, str]:
    """One or two files with lines dropped, doubled, swapped with another file's, or made junk."""
    texts = dict(FILES)
    for name in draw(st.lists(names, min_size=1, max_size=2)):
        lines = texts[name].splitlines() or [""]
        foreign = texts[draw(names)].splitlines() or [""]
        place = draw(st.integers(0, len(lines) - 1))
        new = draw(st.sampled_from([*JUNK, *foreign, f"{lines[place]}\n{lines[place]}"]))
        texts[name] = "\n".join([*lines[:place], new, *lines[place + 1 :]])
    return texts


@settings(deadline=None)  # it writes files, and the machine may be busy
@given(spoiled())
def test_spoiled_files_are_told_and_never_raise(texts: dict[str, str]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        write(
            Path(folder),
            **{name.removesuffix(".toml").replace("/", "__"): text for name, text in texts.items()},
        )
        loaded = load_content(Path(folder))
        findings = findings_of(loaded)
    assert (loaded.catalogue is None) == bool(loaded.findings)
    assert report(loaded, findings)
    assert all(finding.file and finding.message and finding.remedy for finding in findings)
