"""Which test files take longest, so that they come first and no process ends long after the others.

Several processes take one file after the other, from the top. In seconds on two cores, as measured in a
whole run (`--junitxml` tells them); order matters, exact numbers do not. Files that wait (for servers,
browsers, clocks) and files that compute are mixed, since they leave each other room.
"""

from pathlib import Path

TESTS = Path(__file__).resolve().parent
LONGEST_FIRST = (
    "live/test_durability.py",  # 147
    "questions/test_blueprint.py",  # 123
    "live/test_group.py",  # 145
    "questions/test_every_item.py",  # 130 with the files that go with it (`tests/scheduling.py`)
    "browser/test_reading.py",  # 122
    "browser/test_class.py",  # 100
    "live/test_killed.py",  # 100
    "rehearsal/live/test_rehearse.py",  # 90
    "live/test_two_workers.py",  # 86
    "live/test_bad_networks.py",  # 65
    "live/test_all_restarted.py",  # 60
    "live/test_play.py",  # 58
    "browser/test_sizes.py",  # 58
    "browser/test_group_far_away.py",  # 57
    "house/test_web.py",  # 51
    "live/test_proxied.py",  # 50
    "live/test_bench.py",  # 41
    "live/test_start.py",  # 41
    "pages/test_desk_rights.py",  # 39
    "exchange/test_sheet_import.py",  # 38
    "cli/test_commands.py",  # 35
    "questions/test_again.py",  # 35
    "browser/test_blueprint.py",  # 34
    "browser/test_group.py",  # 33
    "browser/test_full_class.py",  # 29
    "browser/test_report.py",  # 28
    "live/test_second_look.py",  # 27
    "live/test_image_steps.py",  # 26
    "realtime/test_mutated.py",  # 20
)
PLACES = {TESTS / name: place for place, name in enumerate(LONGEST_FIRST)}


def place(path: Path) -> int:
    """Where a test file comes; all that are not long come after those that are, in their old order."""
    return PLACES.get(path, len(PLACES))
