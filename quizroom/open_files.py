"""How many files and connections this process may have open at once."""

import sys

BESIDE = 200
"""Open files beside the connections: database, content, log."""
AMPLE = 20_200
"""As many as a server lets in, and those beside."""


def raise_file_limit(connections: int) -> str:
    """Allow this process, and those it starts, so many connections at least, if the machine does.

    Returns:
        What to do where that is not enough, in a sentence; else nothing.
    """
    if sys.platform == "win32":
        return ""  # there is no such limit for sockets
    import resource  # noqa: PLC0415 - not there on Windows

    wanted = connections + BESIDE
    soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    wished = max(wanted, AMPLE)
    allowed = wished if hard == resource.RLIM_INFINITY else min(wished, hard)
    if soft < allowed:
        resource.setrlimit(resource.RLIMIT_NOFILE, (allowed, hard))
    if allowed >= wanted:
        return ""
    return (
        f"This machine allows {allowed} open files, and {connections} connections need {wanted}. "
        f"Raise it before you start: ulimit -n {wanted}"
    )
