"""Cells of tables that are opened in a spreadsheet."""

import re

BEGINS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "\0")
"""OWASP, "CSV Injection": = + - @, tab (0x09), carriage return (0x0D); line feed and null besides, of which
the null is from its Application Security Verification Standard 5.0, 1.2.10."""

FORMULA_AFTER_ANOTHER_SEPARATOR = re.compile(r";(?=[=+\-@])")
"""Where cells are parted by semicolons, as in half of Europe, one of ours falls into several (OWASP, "CSV
Injection", on field separators; from memory)."""
MARKED_AFTER_ANOTHER_SEPARATOR = re.compile(r";'(?=[=+\-@])")


def harmless(cell: str) -> str:
    """The cell, with an apostrophe before what a spreadsheet would take for a formula."""
    inside = FORMULA_AFTER_ANOTHER_SEPARATOR.sub(";'", cell)
    return f"'{inside}" if inside.startswith(BEGINS_A_FORMULA) else inside


def unharmed(cell: str) -> str:
    """The cell as it was before `harmless`."""
    inside = cell[1:] if cell.startswith("'") and cell[1:].startswith(BEGINS_A_FORMULA) else cell
    return MARKED_AFTER_ANOTHER_SEPARATOR.sub(";", inside)
