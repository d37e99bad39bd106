"""The server with a watch beside SQLite: it says when a green thread gives way between the first statement
of a write and its end.

Then another could begin a write as well; its wait for the lock is in C, so that the first one could never
end: the whole server would stand still until SQLite's patience is over.

Run as a module in place of `quizroom`, with the same words after it; or with `give-way` alone, which does on
purpose what must not be done.
"""

import atexit
import sys
import traceback
from typing import Any

from sqlalchemy import Engine, event, text

WRITES = ("INSERT", "UPDATE", "DELETE", "REPLACE")
GAVE_WAY = "GAVE WAY INSIDE A WRITE"
WATCHED = "writes watched: "


class Watch:
    """Which connections are in the middle of a write, and how many writes there were."""

    def __init__(self) -> None:
        """None yet."""
        self.writing = set[int]()
        self.seen = 0

    def begins(self, connection: Any, _cursor: Any, statement: str, *_more: Any) -> None:
        """A statement is about to be run."""
        if statement.lstrip().upper().startswith(WRITES):
            self.seen += id(connection.connection.dbapi_connection) not in self.writing
            self.writing.add(id(connection.connection.dbapi_connection))

    def ends(self, connection: Any) -> None:
        """A transaction ends, one way or the other."""
        self.writing.discard(id(connection.connection.dbapi_connection))

    def gives_way(self) -> None:
        """A green thread lets others run."""
        if self.writing:
            sys.stderr.write(f"{GAVE_WAY}\n{''.join(traceback.format_stack(limit=12))}\n")


def watch(hub: Any) -> Watch:
    """Watch all databases of this process, and this class of hub."""
    made, switch = Watch(), hub.switch

    def switched(self: Any) -> Any:
        made.gives_way()
        return switch(self)

    hub.switch = switched
    event.listen(Engine, "before_cursor_execute", made.begins)
    event.listen(Engine, "commit", made.ends)
    event.listen(Engine, "rollback", made.ends)
    atexit.register(lambda: sys.stderr.write(f"{WATCHED}{made.seen}\n"))
    return made


def give_way() -> None:
    """Sleep in the middle of a write, as nothing in the server may."""
    import time  # noqa: PLC0415 - the patched one

    from sqlalchemy import create_engine  # noqa: PLC0415 - only here

    with create_engine("sqlite://").begin() as connection:
        connection.execute(text("CREATE TABLE anything (a)"))
        time.sleep(0)
        connection.execute(text("INSERT INTO anything VALUES (1)"))
        time.sleep(0)


def main() -> None:
    """Watch, then serve."""
    import quizroom.app  # noqa: PLC0415 - it patches: not in a process that only imports this module
    from quizroom.cli import main as run  # noqa: PLC0415 - after the patch

    driver: Any = vars(quizroom.app)["eventlet"]
    watch(driver.hubs.hub.BaseHub)
    if sys.argv[1:] == ["give-way"]:
        give_way()
    else:
        run()


if __name__ == "__main__":
    main()
