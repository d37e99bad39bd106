"""Parts of the server that follow from its settings alone; `app` puts them together and lets them run."""

import time
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

from quizroom.knowledge.catalogue import Catalogue
from quizroom.pages.me import MyData
from quizroom.protocol.desk_settings import CourseLine, DeskSettings
from quizroom.questions.model import FAMILIES
from quizroom.realtime.handle_filter import reads_rudely
from quizroom.realtime.timed_log import TimedLog
from quizroom.service.forgetting import Forgetting, Keeping
from quizroom.service.groups import GroupLimits
from quizroom.service.histories import Histories
from quizroom.service.player_ports import PlayerStore
from quizroom.service.players import Players
from quizroom.service.ports import Clock, EventLog, Notices
from quizroom.service.tries import OwnTries, Tries
from quizroom.settings import Settings
from quizroom.storage.memory import SilentNotices

if TYPE_CHECKING:
    from quizroom.realtime.meters import Meters

NO_FAN_OUT = (
    "QUIZROOM_FANOUT_URL is not set: what other workers change takes up to half a second, and each worker"
    " counts wrong door codes and passwords for itself."
)


def desk_settings(catalogue: Catalogue, join_address: str) -> DeskSettings:
    """What the desk offers."""
    lines = (
        CourseLine(
            id=course.id,
            title=course.title,
            description=course.description,
            muscles=len(course.muscles),
            families=course.families,
        )
        for course in catalogue.courses.values()
    )
    return DeskSettings(courses=tuple(lines), families=FAMILIES, join_address=join_address)


def group_limits(settings: Settings) -> GroupLimits:
    """What the settings allow study groups."""
    return GroupLimits(
        on=settings.groups,
        size=settings.group_size,
        most=settings.most_groups,
        hours=settings.group_hours,
    )


def keeping_of(settings: Settings) -> Keeping:
    """How long the settings let things be kept."""
    return Keeping(reviews_days=settings.keep_reviews_days, players_days=settings.keep_players_days)


def my_data(
    settings: Settings,
    *,
    players: PlayerStore,
    log: EventLog,
    forgetting: Forgetting,
    clock: Clock,
    breathe: Callable[[], None],
) -> MyData:
    """What players may see and delete of what is kept of them."""
    return MyData(
        players=Players(store=players),
        histories=Histories(players=players, log=log, rosters=forgetting.rosters, breathe=breathe),
        forgetting=forgetting,
        keeping=keeping_of(settings),
        clock=clock,
    )


def handle_filter_of(settings: Settings) -> dict[str, Any]:
    """What seats are told about rude handles."""
    return {"reads_rudely": reads_rudely} if settings.handle_filter else {}


def meters_of(settings: Settings) -> "Meters | None":
    """What counts for /metrics; nothing where that is off, and then nothing is paid for it."""
    if not settings.metrics:
        return None
    from quizroom.realtime.meters import Meters  # noqa: PLC0415 - its library is for those alone who ask

    return Meters()


def timed(log: EventLog, meters: "Meters | None") -> EventLog:
    """The log, with a watch beside it where commits are counted."""
    return TimedLog(log, steady=time.monotonic, committed=meters.committed) if meters else log


def counted(meters: "Meters | None") -> dict[str, Any]:
    """Who is told of each reply where they are counted."""
    return {"answered": meters.answered} if meters else {}


def notices_of(settings: Settings) -> Notices:
    """How workers tell each other of changes."""
    if not settings.fanout_url:
        return SilentNotices(NO_FAN_OUT if settings.is_shared else "")
    from quizroom.storage.redis_notices import RedisNotices  # noqa: PLC0415 - an extra that one server does without

    return RedisNotices(settings.fanout_url)


def tries_of(settings: Settings) -> Tries:
    """How wrong codes and passwords are counted: by all workers together where they have a Redis."""
    if not settings.fanout_url:
        return OwnTries()
    from quizroom.storage.redis_tries import RedisTries  # noqa: PLC0415 - likewise

    return RedisTries(settings.fanout_url, OwnTries())
