"""An ear of the real driver: it hears every message, stays with the hub, and lets a busy reader be."""

import json
import subprocess
import sys


def test_an_ear_hears_everything_and_leaves_the_hub_in_peace_and_a_bell_lets_all_go_on() -> None:
    program = (sys.executable, "-W", "ignore", "-m", "tests.realtime.ears")
    said = subprocess.run(program, capture_output=True, check=True, timeout=60, text=True).stdout
    assert json.loads(said) == {
        # the hub goes on watching from one message to the next ...
        "in_turn": {"given": [["deltoid", True], ["soleus", True], ["psoas", True]], "watched": False},
        # ... but is not told again and again of what a busy reader will read later
        "while_busy": {"given": [False, "second"], "watched": False},
        "at_the_end": {"given": "", "watched": False},
        # all who wait for a bell go on in their order, and nobody waits for one that was set
        "all_go_on": [
            *("set", "first", "second", "third"),
            *("late", "first again", "second again", "third again", "late again"),
        ],
        "one_was_killed": ["killed", "let go", "slept"],
    }
