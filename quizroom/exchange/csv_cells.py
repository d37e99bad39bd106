"""Cells of tables that are opened in a spreadsheet."""

BEGINS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r", "\n", "\0")
"""OWASP, "CSV Injection": = + - @, tab (0x09), carriage return (0x0D); line feed and null besides, of which
the null is from its Application Security Verification Standard 5.0, 1.2.10."""


def harmless(cell: str) -> str:
    """The cell, with an apostrophe before what a spreadsheet would take for a formula."""
    return f"'{cell}" if cell.startswith(BEGINS_A_FORMULA) else cell


def unharmed(cell: str) -> str:
    """The cell as it was before `harmless`."""
    return cell[1:] if cell.startswith("'") and cell[1:].startswith(BEGINS_A_FORMULA) else cell
