"""Erasing players, reviews and rosters: at once where it was asked for, else once their time is over."""

import logging
from dataclasses import dataclass, field
from datetime import datetime, timedelta

from quizroom.room.owner_commands import ForgetPlayer
from quizroom.room.stations import a_clock_may_run
from quizroom.service.player_ports import PlayerStore, ReviewStore, Wiping
from quizroom.service.ports import Clock, NotStored
from quizroom.service.rooms import Rooms, UnknownRoom
from quizroom.service.roster_ports import RosterStore

logger = logging.getLogger(__name__)


@dataclass(frozen=True, slots=True, kw_only=True)
class Keeping:
    """Days after the end of a review, or the last sign of a player, until they are erased; 0: never.

    A class roster goes once no kept review is for credit by it and it was not changed for as long as reviews
    are kept.
    """

    reviews_days: int
    players_days: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Due:
    """What has been kept long enough."""

    reviews: tuple[str, ...]
    players: tuple[str, ...]
    rosters: tuple[str, ...] = ()


@dataclass(slots=True)
class Wipe:
    """Whether something was erased that the files may still hold."""

    due: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Forgetting:
    """Erases players, reviews and class rosters from rooms, tables and files."""

    players: PlayerStore
    reviews: ReviewStore
    rosters: RosterStore
    rooms: Rooms
    wiping: Wiping
    pending: Wipe = field(default_factory=Wipe)

    def forget_player(self, player: str) -> None:
        """Erase a player: from the rooms and their logs first, then everything that refers to them.

        If it breaks off in the middle it may be done again. Raises `NotStored`.
        """
        for seat in self.players.seats_of(player):
            try:
                self.rooms.handle(seat.room, ForgetPlayer(player=seat.player))
            except UnknownRoom:
                logger.warning("a seat pointed to a review that is not there")
        self.players.erase(player)
        self.pending.due = True

    def forget_review(self, room: str) -> None:
        """Erase a review with its log. Raises `NotStored`."""
        self.rooms.forget(room)
        self.reviews.erase_review(room)
        self.pending.due = True

    def forget_roster(self, roster: str) -> None:
        """Erase a class roster with all names on it; reviews keep opaque ids. Raises `NotStored`."""
        self.rosters.erase(roster)
        self.pending.due = True

    def wipe_if_due(self) -> bool:
        """Take what was erased out of the files, unless a round is open: it stops the server for a moment.

        Returns whether nothing is left to be done.
        """
        if not self.pending.due:
            return True
        if any(a_clock_may_run(room) for room in self.rooms.live()):
            return False
        self.pending.due = not self.wiping.wipe()
        return not self.pending.due

    def due(self, keeping: Keeping, now: datetime) -> Due:
        """What has been kept long enough by now."""
        return Due(
            reviews=self._reviews_before(now - timedelta(days=keeping.reviews_days))
            if keeping.reviews_days
            else (),
            players=self.players.unseen_since(now - timedelta(days=keeping.players_days))
            if keeping.players_days
            else (),
            rosters=self.rosters.unused_since(now - timedelta(days=keeping.reviews_days))
            if keeping.reviews_days
            else (),
        )

    def carry_out(self, due: Due) -> None:
        """Erase what is due; players first, so that they leave reviews that stay too. Raises `NotStored`."""
        for player in due.players:
            self.forget_player(player)
        for room in due.reviews:
            self.forget_review(room)
        for roster in due.rosters:
            self.forget_roster(roster)

    def _reviews_before(self, before: datetime) -> tuple[str, ...]:
        return self.reviews.finished_before(before) + self.reviews.abandoned_before(before)


def erase_what_is_due(forgetting: Forgetting, keeping: Keeping, clock: Clock) -> None:
    """The server's own housekeeping: what fails is logged and tried again the next time."""
    try:
        due = forgetting.due(keeping, clock.now())
        forgetting.carry_out(due)
    except Exception:  # whatever it is, the class must go on
        logger.exception("what has been kept long enough could not be erased")
        return
    counts = {"reviews": len(due.reviews), "players": len(due.players), "rosters": len(due.rosters)}
    if any(counts.values()):
        logger.info("erased what was kept long enough", extra=counts)


def wipe_quietly(forgetting: Forgetting) -> None:
    """Wipe if it is due; what fails is logged and tried again."""
    try:
        forgetting.wipe_if_due()
    except NotStored:
        logger.exception("the database's files could not be written anew")
