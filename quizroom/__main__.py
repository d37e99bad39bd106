"""`python3 -m quizroom`: installs itself in a fresh checkout, then serves or does what it is told."""

import sys

if sys.version_info < (3, 11):  # noqa: UP036 - an older Python must say what is wrong, not show a traceback
    sys.exit(
        "quizroom needs Python 3.11 or newer, and this is " + sys.version.split()[0] + ". Install a newer one"
        " and call it by its name, for example: python3.13 -m quizroom"
    )

from quizroom import bootstrap


def main() -> None:
    """Go to the command line if this Python has quizroom, else install and begin again in `.venv`."""
    if not bootstrap.is_at_home():
        bootstrap.hand_over("quizroom", sys.argv[1:])
    from quizroom.cli import main as command_line  # noqa: PLC0415 - exists only once installed

    command_line()


if __name__ == "__main__":
    main()
