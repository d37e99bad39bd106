"""A class roster as a file that `read_roster` takes."""

from collections.abc import Iterable

from quizroom.exchange.csv_files import csv_file
from quizroom.service.roster_ports import RosterRow

HEADER = ("id", "name", "section")


def write_roster(rows: Iterable[RosterRow], *, bom: bool = False) -> bytes:
    """Id, name and section of everybody, in their order."""
    return csv_file(HEADER, ((row.id, row.name, row.section) for row in rows), bom=bom)
