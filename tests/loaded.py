"""A process that has loaded everything and forks `quizroom serve` when told.

Four fifths of what a start costs is loading modules, most of the rest reading the content, and the first
review that is dealt costs more again: what questions are made from is worked out once in a process. The
tests start many servers, so all this is done before the first fork. What runs after it is the command as a
teacher gives it. How a start goes that has to load everything is tested where it matters: in
`tests/live/test_start.py`, and by the programs that other tests start whole.

Run as a module with a folder: each line read is an order, each line written the number of the process that
came of it. When that process has ended, the folder has a file of its number with its exit code.
"""

import gc
import importlib
import json
import os
import runpy
import signal
import sys
from pathlib import Path
from types import FrameType
from typing import NoReturn

from tests.first_deal import read_and_deal
from tests.first_words import say_first_words


def main(folder: Path) -> None:
    """Load once, then fork a server for every line."""
    import quizroom.app  # noqa: PLC0415 - it patches: not in a process that only imports this module
    import quizroom.cli.logs  # noqa: PLC0415 - after the patch
    import quizroom.cli.places  # noqa: F401, PLC0415 - likewise

    def note_ended(_signal: int, _frame: FrameType | None) -> None:
        while ended := _ended_child():
            process, code = ended
            (folder / f"{process}.new").write_text(str(code), encoding="ascii")
            (folder / f"{process}.new").rename(folder / str(process))

    import alembic.command  # noqa: F401, PLC0415 - a first start makes its tables with it, after the patch
    import engineio.async_drivers.eventlet  # noqa: F401, PLC0415 - likewise

    say_first_words()
    read_and_deal()
    signal.signal(signal.SIGCHLD, note_ended)
    gc.freeze()
    for line in sys.stdin:
        process = os.fork()
        if process == 0:
            signal.signal(signal.SIGCHLD, signal.SIG_DFL)
            _become_server(**json.loads(line))
        sys.stdout.write(f"{process}\n")


def _ended_child() -> tuple[int, int] | None:
    try:
        process, status = os.waitpid(-1, os.WNOHANG)
    except ChildProcessError:
        return None
    return (process, os.waitstatus_to_exitcode(status)) if process else None


def _become_server(arguments: list[str], environment: dict[str, str], log: str, first: str) -> NoReturn:
    """`first` is a program to be run before the command, empty for none."""
    from quizroom.cli import main as command_line  # noqa: PLC0415 - loaded already

    # Patching has made a hub, and the system would wake every fork of it for the sockets of all others.
    importlib.import_module("eventlet.hubs").use_hub()
    nothing = os.open(os.devnull, os.O_RDONLY)
    words = os.open(log, os.O_WRONLY | os.O_APPEND)
    for ours, theirs in ((nothing, 0), (words, 1), (words, 2)):
        os.dup2(ours, theirs)
    os.environ.clear()
    os.environ.update(environment)
    if first:
        runpy.run_path(first)
    command_line(arguments, prog_name="quizroom")
    sys.exit(0)


if __name__ == "__main__":
    main(Path(sys.argv[1]))
