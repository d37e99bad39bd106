"""Loops that must not end while the server lives."""

import logging
from collections.abc import Callable

logger = logging.getLogger(__name__)

AGAIN_AFTER_S = 1.0


def keep_running(loop: Callable[[], object], sleep: Callable[[float], object]) -> None:
    """Run what runs for ever; if it breaks, log that and begin again, or rounds would stay open in silence.

    Args:
        loop: what to run; when it returns, all is done.
        sleep: lets so many seconds pass.
    """
    while True:
        try:
            loop()
        except Exception:
            logger.exception("a loop of the server broke; it begins again")
            sleep(AGAIN_AFTER_S)
        else:
            return
