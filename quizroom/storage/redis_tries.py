"""Tries that all workers count together, in Redis; while it is away each worker counts for itself."""

import logging
import time
from collections.abc import Callable, Sequence

from redis import BlockingConnectionPool, Redis
from redis.backoff import NoBackoff
from redis.exceptions import RedisError
from redis.retry import Retry

from quizroom.service.tries import Limit, Tries

PREFIX = "quizroom.tries."
ANSWER_WITHIN_S = 0.5
"""Somebody waits at the door."""
LEFT_ALONE_S = 2.0
"""So long Redis is not asked again after it has failed; longer than it takes to find out."""
MOST_LINES = 8
WAIT_FOR_A_LINE_S = 2.0

COUNT = """
local now, takes, found = tonumber(ARGV[1]), tonumber(ARGV[2]), {}
for number, key in ipairs(KEYS) do
  local most, a_second = tonumber(ARGV[2 * number + 1]), tonumber(ARGV[2 * number + 2])
  local known = redis.call('HMGET', key, 'left', 'at')
  local left, at = tonumber(known[1]) or most, tonumber(known[2]) or now
  left = math.min(most, left + math.max(0, now - at) * a_second)
  if left < math.max(takes, 1) and takes >= 0 then return 0 end
  found[number] = {key, math.min(most, left - takes), math.max(at, now), most, a_second}
end
if takes ~= 0 then
  for _, each in ipairs(found) do
    local key, left, at, most, a_second = unpack(each)
    redis.call('HSET', key, 'left', string.format('%.17g', left), 'at', string.format('%.17g', at))
    redis.call('PEXPIRE', key, math.ceil(1000 * (most - left) / a_second) + 1000)
  end
end
return 1
"""
"""Takes so many tries of each key, if each has that many (0: one must be left; below 0: gives back). Redis
runs it as a whole. A key expires once it has all its tries again, which is as if it had never been.

The time is that of the worker: clocks that differ by a second move what comes back within that second.
"""

logger = logging.getLogger(__name__)


class RedisTries:
    """`service.tries.Tries`, shared by all who are given the same Redis."""

    def __init__(self, url: str, own: Tries, *, steady: Callable[[], float] = time.monotonic) -> None:
        """Count in the server at `url`, or by `own` while it is away; nothing is connected yet."""
        pool = BlockingConnectionPool.from_url(
            url,
            max_connections=MOST_LINES,
            timeout=WAIT_FOR_A_LINE_S,
            socket_connect_timeout=ANSWER_WITHIN_S,
            socket_timeout=ANSWER_WITHIN_S,
            # Once more, at once: a line that was good before Redis was started anew is good no more.
            retry=Retry(NoBackoff(), 1),
        )
        self._client = Redis(connection_pool=pool)
        self._count = self._client.register_script(COUNT)
        self._own, self._steady = own, steady
        self._is_away, self._ask_again_at = False, float("-inf")

    def take(self, limits: Sequence[Limit], now: float) -> bool:
        """Take a try of each limit, or none."""
        return self._ask(lambda: self._counted(limits, now, 1), lambda: self._own.take(limits, now))

    def are_left(self, limit: Limit, now: float) -> bool:
        """Whether there is a try left."""
        return self._ask(lambda: self._counted([limit], now, 0), lambda: self._own.are_left(limit, now))

    def give_back(self, limit: Limit, now: float) -> None:
        """One that was taken does not count."""
        if not self._ask(lambda: self._counted([limit], now, -1), lambda: False):
            self._own.give_back(limit, now)

    def forgive(self, limit: Limit, now: float) -> None:
        """All that were taken do not count, here and there."""
        self._own.forgive(limit, now)
        self._ask(lambda: bool(self._client.delete(PREFIX + limit.name)), lambda: False)

    def close(self) -> None:
        """Let the lines go."""
        self._client.connection_pool.disconnect()

    def _counted(self, limits: Sequence[Limit], now: float, takes: int) -> bool:
        numbers = [number for limit in limits for number in (limit.most, limit.a_second)]
        keys = [PREFIX + limit.name for limit in limits]
        return bool(self._count(keys=keys, args=[repr(now), takes, *map(repr, numbers)]))

    def _ask(self, there: Callable[[], bool], here: Callable[[], bool]) -> bool:
        if self._is_away:
            if self._steady() < self._ask_again_at:
                return here()
            self._leave_alone()  # one finds out whether it is back, and meanwhile nobody else waits for it
        try:
            answer = there()
        except (RedisError, OSError) as error:
            self._leave_alone()
            self._note(str(error))
            return here()
        self._note("")
        return answer

    def _leave_alone(self) -> None:
        self._ask_again_at = self._steady() + LEFT_ALONE_S

    def _note(self, fault: str) -> None:
        if bool(fault) != self._is_away:
            self._is_away = bool(fault)
            told = f"each worker counts for itself ({fault})" if fault else "all workers count together"
            logger.log(logging.WARNING if fault else logging.INFO, "tries: %s", told)
