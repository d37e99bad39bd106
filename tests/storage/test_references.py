"""What is kept of players can be found, and so erased and exported."""

from quizroom.storage.schema import metadata
from quizroom.storage.tables import players


def test_each_column_that_names_a_player_refers_to_the_players() -> None:
    # So that what is kept in it is erased and exported with the player.
    columns = [table.c.player for table in metadata.sorted_tables if "player" in table.c]
    assert len(columns) >= 2
    strays = [
        str(column)
        for column in columns
        if column.table is not players and not any(key.column.table is players for key in column.foreign_keys)
    ]
    assert strays == []
