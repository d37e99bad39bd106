"""A server that is started hundreds of times in a few minutes: a process that has loaded all and forks a
server when told.

Run as a module; the address of the database and the like come from the environment. Each line read is a
port to serve at. Its answer is the number of the process that will serve; that one says `PID PORT KEY` when
it is ready, unless it is killed before.
"""

import gc
import os
import signal
import sys

from tests.first_deal import read_and_deal
from tests.first_words import say_first_words


def main() -> None:
    """Load once, then fork a server for every line."""
    import quizroom.app  # noqa: PLC0415 - it patches: not in a process that only imports this module
    from quizroom.cli.places import catalogue_of, settings_of  # noqa: PLC0415 - after the patch

    load_what_a_start_loads()
    say_first_words()
    read_and_deal()
    signal.signal(signal.SIGCHLD, signal.SIG_IGN)  # nobody waits for those that are killed
    catalogue = catalogue_of(None)
    gc.freeze()  # or each server would look through all of this once more
    for line in sys.stdin:
        process = os.fork()
        if process == 0:
            signal.signal(signal.SIGCHLD, signal.SIG_DFL)
            settings = settings_of({"port": int(line), "host": "127.0.0.1"}, make_data_folder=True)
            quizroom.app.serve(settings, catalogue, players_address=lambda _: "http://192.0.2.7", ready=_say)
            sys.exit(0)
        _write(f"{process}")


def load_what_a_start_loads() -> None:
    """Load what a server loads only once it starts, which each fork would do again."""
    import engineio.async_drivers.eventlet  # noqa: F401, PLC0415 - after the patch

    if os.environ["QUIZROOM_DATABASE_URL"].startswith("postgresql"):
        os.environ["PSYCOPG_WAIT_FUNC"] = "wait_select"  # as `open_database` does before this import
        import psycopg  # noqa: F401, PLC0415 - after the patch
    else:
        import sqlite3  # noqa: F401, PLC0415 - after the patch


def _say(port: int, key: str) -> None:
    _write(f"{os.getpid()} {port} {key}")


def _write(line: str) -> None:
    sys.stdout.write(line + "\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
