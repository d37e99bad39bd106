"""All tables together: whoever makes, moves or keeps them takes `metadata` from here."""

from quizroom.storage import (
    feed_tables,
    host_tables,
    list_tables,
    look_tables,
    own_tables,
    roster_tables,
    tables,
)

TABLE_MODULES = (tables, feed_tables, host_tables, list_tables, look_tables, own_tables, roster_tables)
"""A module of tables that is not named here would not be made."""

metadata = tables.metadata
