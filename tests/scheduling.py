"""Which test files go to the same process: those that would each make the same costly thing once more."""

from xdist.scheduler import LoadFileScheduling

EVERY_ITEM = (
    "tests/questions/test_every_item.py",
    "tests/questions/test_families.py",
    "tests/questions/test_placed_items.py",
    "tests/questions/test_report.py",
    "tests/questions/test_rules.py",
    "tests/questions/test_typed_items.py",
    "tests/questions/test_wording.py",
)
"""They look at every item of every course list, which takes half a minute to make (`questions/lists.py`)."""


def unit_of(file: str) -> str:
    """What goes to a process as a whole: a file, or those that belong together."""
    return "every item" if file in EVERY_ITEM else file


class FilesTogether(LoadFileScheduling):  # type: ignore[misc]  # pytest-xdist carries no types
    """As `--dist loadfile`, a file at a time in each process, but that files may belong together."""

    def _split_scope(self, nodeid: str) -> str:
        """What a test goes with; pytest-xdist asks by this name."""
        return unit_of(nodeid.partition("::")[0])
