"""People at work in threads, who are sent home whatever comes of a test."""

import threading
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager

PATIENCE_S = 30.0


@contextmanager
def at_work(work: Iterable[Callable[[], None]], end: Callable[[], None]) -> Iterator[None]:
    """Run each in a thread of its own meanwhile; then call `end`, and wait for them."""
    # should a server be gone for good, the process does not wait for them for ever
    threads = [threading.Thread(target=each, daemon=True) for each in work]
    for thread in threads:
        thread.start()
    try:
        yield
    finally:
        end()
        for thread in threads:
            thread.join(PATIENCE_S)
