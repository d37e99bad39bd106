"""Cells of tables that are opened in a spreadsheet."""

BEGINS_A_FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""After OWASP, "CSV Injection", from memory."""


def harmless(cell: str) -> str:
    """The cell, with an apostrophe before what a spreadsheet would take for a formula."""
    return f"'{cell}" if cell.startswith(BEGINS_A_FORMULA) else cell
