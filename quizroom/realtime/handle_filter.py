"""Which handles are kept off the wall: what a published word list finds rude, however it is spaced."""

import unicodedata
from collections.abc import Callable

from better_profanity import Profanity


def rude_handles() -> Callable[[str], bool]:
    """A test for handles. It errs on the careful side, so it only ever asks for another handle."""
    listed = Profanity()

    def reads_rudely(handle: str) -> bool:
        folded = unicodedata.normalize("NFKC", handle)
        run_together = "".join(character for character in folded if character.isalnum())
        without_figures = "".join(c if c.isalpha() else " " for c in folded)
        readings = (folded, run_together, without_figures)
        return any(listed.contains_profanity(reading) for reading in readings)

    return reads_rudely
