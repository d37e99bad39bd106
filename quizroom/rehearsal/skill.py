"""What a simulated player knows, takes and how long it takes.

Whether somebody gets an item right follows the Rasch model: the chance is 1 / (1 + e^(difficulty - ability))
(Rasch 1960, from memory). The same seed gives the same class.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from math import exp
from random import Random
from types import MappingProxyType
from typing import Any

MISSPELLS = 0.15
"""Share of right typed answers that come with two letters swapped."""

LANDMARKS = (
    *("coracoid process of the scapula", "olecranon of the ulna", "radial tuberosity", "greater tubercle"),
    *("medial epicondyle of the humerus", "acromion", "clavicle", "elbow"),
)
COMES_TO_MIND: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "origin": LANDMARKS,
        "insertion": LANDMARKS,
        "look_alike": LANDMARKS,
        "root": ("C5", "C6", "C5 and C6", "C7", "T1"),
        "nerve": ("radial nerve", "median nerve", "ulnar nerve", "axillary nerve", "brachial plexus"),
        "artery": ("brachial artery", "radial artery", "ulnar artery", "axillary artery"),
        "joint": ("elbow joint", "wrist joint", "shoulder joint"),
        "action": ("flexion", "extension", "abduction", "rotation"),
        "prime_mover": ("biceps", "deltoid", "triceps"),
    }
)
"""Wrong answers as classes give them; where one happens to be right, it is marked right."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """An item as the simulation needs it: it takes the key from the desk, for nobody else knows it."""

    item: str
    round: int
    format: str
    family: str
    stem: str
    letters: tuple[str, ...]
    key: tuple[str, ...]
    words: tuple[str, ...]
    other_words: tuple[str, ...]
    pick: int
    seconds: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Choice:
    """What a player hands in."""

    choice: tuple[str, ...] = ()
    typed: tuple[str, ...] = ()


def task_of(desk: dict[str, Any], number: int) -> Task:
    """The task of a round, from a desk view."""
    item = next(item for item in desk["items"] if item["round"] == number)
    return Task(
        item=item["id"],
        round=number,
        format=item["format"],
        family=item["family"],
        stem=item["stem"],
        letters=tuple(option["letter"] for option in item["options"]),
        key=_key_of(item),
        words=tuple(item["key_text"]),
        other_words=_other_words(desk, item),
        pick=item["pick"],
        seconds=item["seconds"],
    )


def difficulty(item: str, seed: int) -> float:
    """How hard an item is, on the logit scale."""
    return Random(f"difficulty {seed} {item}").gauss(-0.4, 0.9)  # noqa: S311 - a simulation, no secret


def chance_to_know(*, ability: float, difficulty: float) -> float:
    """The Rasch model."""
    return 1 / (1 + exp(difficulty - ability))


def choice_of(task: Task, *, ability: float, seed: int, dice: Random) -> Choice:
    """What a player of this ability hands in: an answer that fits the item's format, right or wrong."""
    chance = chance_to_know(ability=ability, difficulty=difficulty(task.item, seed))
    if task.format == "one_best":
        right = dice.random() < chance
        return Choice(choice=task.key if right else (_tempting(task, seed, dice),))
    if task.format == "pick_n":
        return Choice(choice=_members(task.key, task.letters, task.pick, chance=chance, dice=dice))
    if task.format == "ordering":
        return Choice(choice=_in_order(task.key, chance=chance, dice=dice))
    if task.format == "matching":
        return Choice(choice=_in_rows(task.key, task.letters, chance=chance, dice=dice))
    found = _members(task.words, task.other_words, task.pick, chance=chance, dice=dice)
    return Choice(typed=tuple(_as_typed(word, dice) for word in found) or ("no idea",))


def thinking_s(task: Task, *, pace: float, typical_s: float, dice: Random) -> float:
    """How long it takes to answer; typing takes half as long again."""
    typing = 1.0 if task.letters else 1.5
    thinking = typical_s * pace * typing * dice.lognormvariate(0.0, 0.35)
    return min(thinking, 0.8 * task.seconds) if task.seconds else thinking


def _tempting(task: Task, seed: int, dice: Random) -> str:
    """A wrong option; one of them tempts most people, as in real classes."""
    wrong = [letter for letter in task.letters if letter not in task.key]
    Random(f"temptation {seed} {task.item}").shuffle(wrong)  # noqa: S311 - a simulation, no secret
    return dice.choices(wrong, weights=[1 / (place + 1) for place in range(len(wrong))])[0]


def _members(
    key: tuple[str, ...], others: tuple[str, ...], pick: int, *, chance: float, dice: Random
) -> tuple[str, ...]:
    """Each member of the key with this chance, the rest filled with others, at least one in all."""
    known = [member for member in key[:pick] if dice.random() < chance]
    wrong = [other for other in others if other not in key]
    filled = dice.sample(wrong, min(len(wrong), pick - len(known)))
    return tuple(sorted([*known, *filled]) or key[:1])


def _in_order(key: tuple[str, ...], *, chance: float, dice: Random) -> tuple[str, ...]:
    """The order with neighbours exchanged wherever somebody is unsure."""
    order = list(key)
    for place in range(len(order) - 1):
        if dice.random() > chance:
            order[place], order[place + 1] = order[place + 1], order[place]
    return tuple(order)


def _in_rows(
    key: tuple[str, ...], letters: tuple[str, ...], *, chance: float, dice: Random
) -> tuple[str, ...]:
    """Each row right with this chance, else any letter."""
    return tuple(letter if dice.random() < chance else dice.choice(letters) for letter in key)


def _key_of(item: dict[str, Any]) -> tuple[str, ...]:
    if item.get("rows"):
        return tuple(row["letter"] for row in item["rows"])
    return tuple(option["letter"] for option in item["options"] if option["is_key"])


def _as_typed(word: str, dice: Random) -> str:
    if len(word) < 6 or dice.random() > MISSPELLS:
        return word
    place = dice.randrange(2, len(word) - 2)
    return f"{word[:place]}{word[place + 1]}{word[place]}{word[place + 2 :]}"


def _other_words(desk: dict[str, Any], item: dict[str, Any]) -> tuple[str, ...]:
    """What somebody might write who does not know: keys of akin items, else terms that come to mind."""
    others = [other for other in desk["items"] if other["id"] != item["id"]]
    akin = [text for other in others if other["family"] == item["family"] for text in other["key_text"]]
    muscles = tuple(name for other in others for name in other["muscles"])
    asks_for_muscles = bool(set(item["key_text"]) & set(item["muscles"]))
    first = muscles if asks_for_muscles else COMES_TO_MIND.get(item["family"], muscles)
    return tuple(dict.fromkeys([*akin, *first]))
