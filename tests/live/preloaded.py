"""A server that is started a hundred times in a minute: a process that has loaded all and forks a server
when told.

Run as a module; the address of the database and the like come from the environment. Each line read is a
port to serve at; each server says `PID PORT KEY` when it is ready.
"""

import os
import signal
import sys


def main() -> None:
    """Load once, then fork a server for every line."""
    import quizroom.app  # noqa: PLC0415 - it patches: not in a process that only imports this module
    from quizroom.cli.places import catalogue_of, settings_of  # noqa: PLC0415 - after the patch

    if os.environ["QUIZROOM_DATABASE_URL"].startswith("postgresql"):
        os.environ["PSYCOPG_WAIT_FUNC"] = "wait_select"  # as `open_database` does before this import
        import psycopg  # noqa: F401, PLC0415 - a quarter of a second that each fork would spend

    signal.signal(signal.SIGCHLD, signal.SIG_IGN)  # nobody waits for those that are killed
    catalogue = catalogue_of(None)
    for line in sys.stdin:
        if os.fork() == 0:
            signal.signal(signal.SIGCHLD, signal.SIG_DFL)
            settings = settings_of({"port": int(line), "host": "127.0.0.1"}, make_data_folder=True)
            quizroom.app.serve(settings, catalogue, players_address=lambda _: "http://192.0.2.7", ready=_say)
            sys.exit(0)


def _say(port: int, key: str) -> None:
    sys.stdout.write(f"{os.getpid()} {port} {key}\n")
    sys.stdout.flush()


if __name__ == "__main__":
    main()
