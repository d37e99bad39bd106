"""What the counts of classes are kept in. Storage fills this in."""

from collections.abc import Sequence
from typing import Protocol

from quizroom.questions.experience import AskCount


class ClassChoices(Protocol):
    """Counts of what classes chose, by review, so that a review can be counted anew or erased.

    They hold no players. Every change may raise `NotStored`.
    """

    def replace(self, room: str, *, course: str, version: int, counts: Sequence[AskCount]) -> None:
        """Keep the counts of a review, made from so many events; older ones never replace newer ones."""

    def forget(self, room: str) -> None:
        """Remove the counts of a review."""

    def behind(self) -> tuple[str, ...]:
        """Finished reviews that were not counted, or whose log has grown since."""

    def counts(self, course: str | None = None) -> tuple[AskCount, ...]:
        """All counts of a course list, or of all, summed and sorted; those of erased reviews are left out."""

    def counted(self) -> tuple[tuple[str, int], ...]:
        """The reviews whose counts `counts` sums up, sorted, with the versions they were made from.

        While this stays the same, so do all counts, whichever worker of a server has changed them.
        """
