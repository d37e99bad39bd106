"""What classes did, counted when their reviews end and whenever an ended review is marked anew."""

import logging
from dataclasses import dataclass, field

from quizroom.analysis.choices import choices_of
from quizroom.questions.experience import ClassExperience, experience_of
from quizroom.service.class_ports import ClassChoices
from quizroom.service.ports import NotStored
from quizroom.service.rooms import Change, Rooms

logger = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Known:
    """What was read from the store, and which reviews were counted then, up to which version."""

    counted: tuple[tuple[str, int], ...]
    experience: ClassExperience


@dataclass(frozen=True, slots=True, kw_only=True)
class ClassWork:
    """Counts reviews into a store, and reads from it what the next deal should know."""

    rooms: Rooms
    choices: ClassChoices
    waiting: dict[str, None] = field(default_factory=dict)
    """Reviews to be counted, in order."""
    known: dict[str, _Known] = field(default_factory=dict)
    """By course list: what was read last."""

    def note(self, change: Change) -> None:
        """Remember a review that has ended or was changed since; it is counted later, outside of its turn."""
        if change.room.phase == "finished":
            self.waiting[change.room.id] = None

    def catch_up(self) -> None:
        """After a start: remember all reviews that another run of the server left uncounted."""
        self.waiting.update(dict.fromkeys(self.choices.behind()))

    def count_one(self) -> None:
        """Count the review that waits longest, if any: one at a time, so that rooms are served between.

        If the store fails that is logged, and it goes on waiting.
        """
        room = next(iter(self.waiting), None)
        if room is None:
            return
        del self.waiting[room]
        try:
            self._count(room)
        except NotStored:
            self.waiting[room] = None
            logger.exception("what a class chose could not be stored; it will be tried again")
        except Exception:  # a review that cannot be read must not keep the others waiting
            logger.exception("the review %s could not be counted", room)

    def experience(self, course: str) -> ClassExperience:
        """What classes of a course list, and all classes, did until now.

        Read anew only if a review was counted, counted again or erased since, by this worker or another.
        """
        counted = self.choices.counted()
        known = self.known.get(course)
        if known is None or known.counted != counted:
            experience = experience_of(self.choices.counts(course), self.choices.counts())
            known = self.known[course] = _Known(counted=counted, experience=experience)
        return known.experience

    def _count(self, room_id: str) -> None:
        room = self.rooms.find(room_id)
        if room is None:
            self.choices.forget(room_id)
        else:
            self.choices.replace(
                room.id, course=room.plan.course, version=room.version, counts=choices_of(room)
            )
