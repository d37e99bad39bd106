"""Messages as nobody should send them: good ones, spoilt at random places, and nonsense."""

from collections.abc import Callable
from copy import deepcopy
from random import Random
from typing import Any

from tests.protocol.wording import all_types, message

ODD: tuple[Any, ...] = (
    None,
    True,
    -1,
    0,
    2**63,
    1.5,
    float("inf"),
    "",
    "A",
    "\x00",
    "\ud800",
    "\u202e" * 50,
    "x" * 70_000,
    "'; drop table events; --",
    "<script>alert(1)</script>",
    [],
    [[[[[[]]]]]],
    ["A"] * 5000,
    {},
    {"id": {"id": {"id": "m"}}},
    b"\xff\x00",
)
KINDS = sorted(all_types())


def mutated(rng: Random) -> Any:
    """Something to say: one in ten is nothing like a message, the others are nearly good."""
    if rng.random() < 0.1:
        return nonsense(rng)
    spoilt = deepcopy(message(rng.choice(KINDS)))
    for _ in range(rng.choice((0, 1, 1, 2, 3))):
        rng.choice(CHANGES)(rng, spoilt)
    return spoilt


def nonsense(rng: Random, depth: int = 0) -> Any:
    """A value of any shape."""
    if depth > 3 or rng.random() < 0.6:
        return rng.choice(ODD)
    if rng.random() < 0.5:
        return [nonsense(rng, depth + 1) for _ in range(rng.randrange(4))]
    return {str(rng.choice(ODD))[:20]: nonsense(rng, depth + 1) for _ in range(rng.randrange(4))}


def _other_value(rng: Random, spoilt: dict[str, Any]) -> None:
    if spoilt:
        spoilt[rng.choice(sorted(spoilt))] = nonsense(rng)


def _missing_field(rng: Random, spoilt: dict[str, Any]) -> None:
    if spoilt:
        del spoilt[rng.choice(sorted(spoilt))]


def _extra_field(rng: Random, spoilt: dict[str, Any]) -> None:
    spoilt[rng.choice(("host", "player", "version", "mark", "__class__", ""))] = nonsense(rng)


def _other_type(rng: Random, spoilt: dict[str, Any]) -> None:
    spoilt["type"] = rng.choice((*KINDS, "ShowView", "show_view ", "drop_tables", ""))


def _other_number(rng: Random, spoilt: dict[str, Any]) -> None:
    numbers = sorted(name for name, value in spoilt.items() if isinstance(value, int))
    if numbers:
        spoilt[rng.choice(numbers)] = rng.choice((-1, 0, 1, 2, 3, 99, 2**31, -(2**63)))


CHANGES: tuple[Callable[[Random, dict[str, Any]], None], ...] = (
    _other_value,
    _missing_field,
    _extra_field,
    _other_type,
    _other_number,
)
