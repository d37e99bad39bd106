"""What classes chose, in memory, for tests and for trying things out."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass

from quizroom.analysis.choices import summed
from quizroom.questions.experience import AskCount


@dataclass(frozen=True, slots=True, kw_only=True)
class _Counted:
    course: str
    version: int
    counts: tuple[AskCount, ...]


class MemoryClassChoices:
    """`service.class_ports.ClassChoices` in a dictionary."""

    def __init__(self, finished: Callable[[], Mapping[str, int]]) -> None:
        """`finished` gives the finished reviews that are there, and the versions of their logs."""
        self._finished = finished
        self._reviews: dict[str, _Counted] = {}

    def replace(self, room: str, *, course: str, version: int, counts: Sequence[AskCount]) -> None:
        """Keep the counts of a review; older ones never replace newer ones."""
        known = self._reviews.get(room)
        if known is None or known.version <= version:
            self._reviews[room] = _Counted(course=course, version=version, counts=tuple(counts))

    def forget(self, room: str) -> None:
        """Remove the counts of a review."""
        self._reviews.pop(room, None)

    def behind(self) -> tuple[str, ...]:
        """Finished reviews that were not counted, or whose log has grown since."""
        return tuple(room for room, version in self._finished().items() if self._version(room) < version)

    def counts(self, course: str | None = None) -> tuple[AskCount, ...]:
        """All counts of a course list, or of all, summed and sorted."""
        there = self._finished()
        return summed(
            one
            for room, kept in self._reviews.items()
            if room in there and course in (None, kept.course)
            for one in kept.counts
        )

    def counted(self) -> tuple[tuple[str, int], ...]:
        """The reviews that are summed up, with the versions their counts were made from."""
        there = self._finished()
        return tuple(sorted((room, kept.version) for room, kept in self._reviews.items() if room in there))

    def _version(self, room: str) -> int:
        known = self._reviews.get(room)
        return 0 if known is None else known.version
