"""The database, and the Redis by which workers tell each other of changes."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta

from quizroom.assembly import NO_FAN_OUT
from quizroom.doctor.finding import Finding, fault, remark, well
from quizroom.service.ports import NotStored
from quizroom.settings import Settings
from quizroom.storage.condition import Condition, condition_of
from quizroom.storage.database import open_as_it_is

ABOUT = "Database"
CLOCKS_AGREE = timedelta(seconds=1)
"""How far clocks may be apart: common practice, no source. Deadlines are judged by the worker's clock."""
SLOW_S = 0.05
KEEP_TIME = "Let NTP set the clocks of all machines (timedatectl set-ntp true)."


def store_findings(settings: Settings) -> Iterator[Finding]:
    """What is found of the database and of Redis."""
    try:
        engine = open_as_it_is(settings.database_url)
    except NotStored:
        yield well(ABOUT, "There is none yet; the first start makes it.")
    else:
        try:
            yield from database_findings(condition_of(engine), settings, datetime.now(UTC))
        except NotStored as reason:
            yield _silent(settings, reason.first_line.rstrip("."))
        finally:
            engine.dispose()
    if settings.fanout_url:
        yield redis_finding(settings.fanout_url)
    elif settings.is_shared:
        yield remark("Redis", NO_FAN_OUT, "Set QUIZROOM_FANOUT_URL where there is more than one worker.")


def database_findings(found: Condition, settings: Settings, now: datetime) -> Iterator[Finding]:
    """What a database's condition means."""
    yield _of_release(found)
    if found.damage:
        yield fault(ABOUT, f"It is damaged: {found.damage}.", "End the server and restore the newest backup.")
    if found.locked:
        yield fault(
            ABOUT,
            f"Nothing can be written to it: {found.locked}.",
            "Give its files to the user that runs quizroom, and end other programs that hold them.",
        )
    if found.answer_s > SLOW_S:
        yield remark(
            ABOUT,
            f"It takes {found.answer_s * 1000:.0f} ms to answer; every answer of a class waits for that.",
            "Bring it nearer to the workers.",
        )
    yield from _of_settings(found, settings)
    yield _of_clock(found, settings, now)


def redis_finding(url: str) -> Finding:
    """Whether Redis answers, and keeps the time."""
    from quizroom.storage.redis_clock import redis_clock  # noqa: PLC0415 - an extra that one server does without

    try:
        ahead = redis_clock(url) - datetime.now(UTC)
    except NotStored as reason:
        return remark(
            "Redis",
            f"It does not answer: {reason.cause.rstrip('.')}.",
            "Start it, and see that QUIZROOM_FANOUT_URL names its host, port and password.",
        )
    if abs(ahead) > CLOCKS_AGREE:
        return remark("Redis", f"Its clock is {_apart(ahead)} this machine's.", KEEP_TIME)
    return well("Redis", "It answers.")


def _silent(settings: Settings, why: str) -> Finding:
    remedy = (
        "Start it, and see that QUIZROOM_DATABASE_URL names its host, user, password and database."
        if settings.is_shared
        else "See that the file is quizroom's and may be read, or restore the newest backup."
    )
    return fault(ABOUT, f"It does not answer: {why}.", remedy)


def _of_release(found: Condition) -> Finding:
    match found.release:
        case "later":
            return fault(ABOUT, "Its tables are of a later release.", "Install that release, or a later one.")
        case "earlier":
            return remark(
                ABOUT,
                "Its tables are of an earlier release; the next start brings them up to date.",
                "Make a backup first, and end all servers of the earlier release.",
            )
        case "none":
            return well(ABOUT, "It answers and has no tables yet; the first start makes them.")
        case "this":
            return well(
                ABOUT, f"It answers within {found.answer_s * 1000:.1f} ms, and its tables are up to date."
            )


def _of_settings(found: Condition, settings: Settings) -> Iterator[Finding]:
    told = found.settings
    if told.get("transaction_read_only") == "on":
        yield fault(
            ABOUT, "It may only be read.", "Name the primary in QUIZROOM_DATABASE_URL, not a standby."
        )
    # With either off a crash may lose what was committed (PostgreSQL documentation, "Write Ahead Log").
    for name in ("fsync", "synchronous_commit"):
        if told.get(name) == "off":
            yield fault(
                ABOUT,
                f"{name} is off: answers that were acknowledged may be lost in a crash.",
                f"Set {name} = on in postgresql.conf.",
            )
    most = int(told.get("max_connections", "0"))
    if told and settings.database_connections * 2 > most:
        yield remark(
            ABOUT,
            f"It takes {most} connections, too few for two workers of {settings.database_connections}.",
            "Raise max_connections in postgresql.conf, or lower QUIZROOM_DATABASE_CONNECTIONS.",
        )


def _of_clock(found: Condition, settings: Settings, now: datetime) -> Finding:
    if abs(found.ahead) > CLOCKS_AGREE:
        return fault("Clock", f"The database's clock is {_apart(found.ahead)} this machine's.", KEEP_TIME)
    seen = found.last_beat
    if seen is not None and seen - now > CLOCKS_AGREE + timedelta(days=settings.days_ahead):
        return fault(
            "Clock",
            f"It is {_written(now)} here, but a server was alive at {_written(seen)}.",
            f"{KEEP_TIME} Deadlines and days of return follow from it.",
        )
    return well("Clock", f"It is {_written(now)}.")


def _apart(ahead: timedelta) -> str:
    seconds = ahead.total_seconds()
    return f"{abs(seconds):.0f} s {'ahead of' if seconds > 0 else 'behind'}"


def _written(at: datetime) -> str:
    return f"{at:%Y-%m-%d %H:%M} UTC"
