"""Tables as CSV files (RFC 4180): UTF-8, lines ended by CR LF, a header first, no cell a formula."""

import csv
import io
from collections.abc import Iterable, Sequence

from quizroom.exchange.csv_cells import harmless

BYTE_ORDER_MARK = "\ufeff"
"""By it some spreadsheets know that a file is in UTF-8."""


def csv_file(header: Sequence[str], rows: Iterable[Sequence[str]], *, bom: bool = False) -> bytes:
    """The bytes of a file; with `bom` a byte order mark stands before the header."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    for row in (header, *rows):
        writer.writerow([harmless(cell) for cell in row])
    return f"{BYTE_ORDER_MARK if bom else ''}{out.getvalue()}".encode()
