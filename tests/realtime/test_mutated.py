"""A hundred thousand random and spoilt messages: each is answered, none does harm, memory stays flat."""

import gc
import logging
import sys
from collections import Counter
from random import Random
from typing import Any

import pytest

from tests.realtime.hall import Hall, hall_with
from tests.realtime.mutation import mutated

WHO = ("host", "ada", "wall", "stranger")
MESSAGES = 100_000
IN_A_HALL = 1_000
ANSWERS = {"done", "refused"}


def heard(hall: Hall, rng: Random, times: int) -> Counter[str]:
    """Say so many things from all sides; what was answered."""
    found: Counter[str] = Counter()
    for _ in range(times):
        hall.steady_s += 10
        raw = mutated(rng)
        before = _versions(hall)
        reply = hall.gateway.say(rng.choice(WHO), raw)
        assert reply["result"] in ANSWERS, (raw, reply)
        if reply["result"] == "refused":
            assert _versions(hall) == before, (raw, reply)
            assert reply["text"], (raw, reply)
        found[reply["code"] or "done"] += 1
    hall.broadcast.run_once(with_tallies=True)
    return found


def _versions(hall: Hall) -> dict[str, int]:
    return {room.id: room.version for room in hall.rooms.live()}


def test_every_one_of_a_hundred_thousand_is_answered_and_memory_stays_flat(
    caplog: pytest.LogCaptureFixture,
) -> None:
    rng, found = Random(5), Counter[str]()  # noqa: S311 - spoiling messages, not secrets
    caplog.set_level(logging.WARNING)
    used: list[int] = []
    gc.collect()
    gc.freeze()  # what earlier tests have left in memory need not be looked through a hundred times
    for _ in range(MESSAGES // IN_A_HALL):
        hall = hall_with("ada")
        hall.connect("stranger")
        found += heard(hall, rng, IN_A_HALL)
        del hall
        gc.collect()
        used.append(sys.getallocatedblocks())
    assert sum(found.values()) == MESSAGES
    assert caplog.records == [], "a traceback was logged"
    assert {"done", "bad_message", "not_host", "not_answering", "unknown_door"} <= found.keys()
    a_tenth = len(used) // 10
    assert max(used[-a_tenth:]) < 1.01 * max(used[a_tenth : 2 * a_tenth])


@pytest.mark.parametrize("who", ["stranger", "wall"])
def test_whoever_changes_nothing_costs_one_and_the_same_server_no_memory(who: str) -> None:
    rng, hall, used = Random(9), hall_with("ada"), list[int]()  # noqa: S311 - likewise
    hall.connect("stranger")
    said = [raw for raw in (mutated(rng) for _ in range(2_500)) if not makes_something(raw)]
    for _ in range(4):
        for raw in said:
            hall.steady_s += 10
            hall.clock.move(1)
            hall.gateway.say(who, raw)
        hall.broadcast.run_once(with_tallies=True)
        hall.lines.sent.clear()
        gc.collect()
        used.append(sys.getallocatedblocks())
    assert used[-1] < used[1] + 500


def makes_something(raw: object) -> bool:
    """Whether a stranger may say this and a seat or a room comes of it."""
    return isinstance(raw, dict) and raw.get("type") in ("open_group", "enter_seat")


@pytest.mark.parametrize("who", WHO)
def test_what_is_refused_tells_nothing_of_the_insides(who: str) -> None:
    rng, hall = Random(7), hall_with("ada")  # noqa: S311 - likewise
    hall.connect("stranger")
    for _ in range(2_000):
        hall.steady_s += 10
        reply: dict[str, Any] = hall.gateway.say(who, mutated(rng))
        for inside in ("Traceback", "quizroom.", "pydantic", "sqlite", ".py", "0x"):
            assert inside not in reply.get("text", ""), reply
