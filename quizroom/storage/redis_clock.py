"""What time Redis has."""

from datetime import UTC, datetime

from redis import Redis
from redis.exceptions import RedisError

from quizroom.service.ports import NotStored
from quizroom.storage.redis_notices import ANSWER_WITHIN_S


def redis_clock(url: str) -> datetime:
    """Ask for its time (TIME: seconds, and microseconds within the second).

    Raises:
        NotStored: it does not answer.
    """
    wait = {"socket_connect_timeout": ANSWER_WITHIN_S, "socket_timeout": ANSWER_WITHIN_S}
    try:
        with Redis.from_url(url, **wait) as client:
            seconds, microseconds = client.time()
    except (RedisError, OSError) as error:
        raise NotStored(str(error)) from error
    return datetime.fromtimestamp(int(seconds), UTC).replace(microsecond=int(microseconds))
