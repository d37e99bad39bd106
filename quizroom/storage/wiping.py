"""Taking what was erased out of the database's files.

SQLite overwrites what is deleted (`secure_delete`, set in `database.py`), but pages that were split or
merged may hold old copies, and so does the write-ahead log. VACUUM writes the file anew, and a truncating
checkpoint empties the log (SQLite documentation, "Pragma statements" and "VACUUM").
"""

from sqlalchemy import Connection, Engine
from sqlalchemy.exc import OperationalError

from quizroom.service.ports import NotStored

AT_ONCE = "PRAGMA busy_timeout=0"
AS_BEFORE = "PRAGMA busy_timeout=5000"


class SqlWiping:
    """`service.player_ports.Wiping`; of PostgreSQL it asks for a VACUUM, which hands dead rows back."""

    def __init__(self, engine: Engine) -> None:
        """Wipe the files of this database."""
        self._engine = engine

    def wipe(self) -> bool:
        """Write the file anew without what was erased; False if somebody else uses it just now."""
        try:
            with self._engine.connect().execution_options(isolation_level="AUTOCOMMIT") as connection:
                if connection.dialect.name != "sqlite":
                    connection.exec_driver_sql("VACUUM")
                    return True
                return _rewritten(connection)
        except OperationalError as busy:
            if "locked" in str(busy) or "busy" in str(busy):
                return False
            raise NotStored(str(busy)) from busy


def _rewritten(connection: Connection) -> bool:
    # Whoever waits here lets the whole server wait.
    connection.exec_driver_sql(AT_ONCE)
    try:
        connection.exec_driver_sql("VACUUM")
        busy, _, _ = connection.exec_driver_sql("PRAGMA wal_checkpoint(TRUNCATE)").one()
        return int(busy) == 0
    finally:
        connection.exec_driver_sql(AS_BEFORE)
