"""How a process that lives long has the collector look: seldom, and never at what its start has made."""

import gc
from collections.abc import Iterator
from contextlib import contextmanager

_NEW_CONTAINERS = 30_000
"""The usual 700 come with every few answers."""
_OLDER = 5


def let_the_collector_wait() -> None:
    """Take all that was made until now as kept for ever, and have the collector look seldom from now on."""
    gc.collect()
    gc.freeze()
    gc.enable()
    gc.set_threshold(_NEW_CONTAINERS, _OLDER, _OLDER)


@contextmanager
def collector_as_on_a_server() -> Iterator[None]:
    """The same for as long as something is measured; then as it was."""
    before = gc.get_threshold()
    let_the_collector_wait()
    try:
        yield
    finally:
        gc.unfreeze()
        gc.set_threshold(*before)
