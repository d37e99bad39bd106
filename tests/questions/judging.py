"""The oracle's judgement of single items, given as plain values."""

import re
from typing import Any

from tests.questions.oracle import Oracle

Plain = dict[str, Any]
RELATIONS = {
    "origin": "origin",
    "insertion": "insertion",
    "action": "action",
    "prime_mover": "prime",
    "joint": "crossing",
    "nerve": "nerve",
    "artery": "artery",
}
SETS = {"nerve": "nerve", "site": "attachment", "prime": "prime", "compartment": "compartment"}
NUMBERS = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6}


def complaints(oracle: Oracle, item: Plain) -> list[str]:
    """Everything that is unfair about an item; empty if it is just."""
    found = {
        "one_best": _on_one_best,
        "pick_n": _on_pick_n,
        "typed": _on_typed,
        "free_list": _on_free_list,
    }[item["format"]](oracle, item)
    return [f"{item['stem']} -> {complaint}" for complaint in found]


def meaning(item: Plain) -> tuple[str, str]:
    """The relation that an item is about, and the direction it goes."""
    family, direction = str(item["family"]), str(item["direction"])
    if family == "look_alike" and ":" in direction:
        family, direction = direction.split(":")
    if family == "set":
        return SETS[direction.partition("_")[0]], direction
    return RELATIONS.get(family, direction), direction


def truths(oracle: Oracle, item: Plain, concept: str) -> tuple[bool, bool]:
    """Whether an option may be right by any reading, and whether it surely is."""
    relation, direction = meaning(item)
    if direction == "landmark_to_bone":
        place = oracle.text.landmarks[item["subject"]]
        return concept in oracle.bones_with(place["name"]), concept in place["bones"]
    if direction == "meaning_to_movement":
        means = oracle.text.movements[concept.partition(".")[2]]["meaning"].split(";")[0]
        return means in item["stem"], means in item["stem"]
    if direction.startswith("muscle_to_"):
        holder = item["subject"] if relation not in ("action", "prime") else item["subject"].partition("/")[0]
        sure = oracle.is_sure(relation, item["subject"], concept)
        return oracle.may_be(relation, holder, concept), sure
    value = item["subject"]
    return oracle.may_be(relation, concept, value), oracle.is_sure(relation, concept, value)


def _on_one_best(oracle: Oracle, item: Plain) -> list[str]:
    found = _on_options(oracle, item)
    if len(item["key"]) != 1 or item["pick"] != 1:
        found.append("not one key")
    if not 3 <= len(item["options"]) <= 5:
        found.append(f"{len(item['options'])} options")
    return found


def _on_pick_n(oracle: Oracle, item: Plain) -> list[str]:
    found = _on_options(oracle, item)
    said = re.search(r"Which (\w+) of", item["stem"])
    if not said or not len(item["key"]) == item["pick"] == NUMBERS[said[1]]:
        found.append("the number in the stem is not that of the key")
    if not 3 <= len(item["options"]) - item["pick"] <= 5:
        found.append(f"{len(item['options'])} options for {item['pick']}")
    return found


def _on_options(oracle: Oracle, item: Plain) -> list[str]:
    found = []
    relation, direction = meaning(item)
    for option in item["options"]:
        possible, sure = truths(oracle, item, option["concept"])
        if option["letter"] in item["key"] and not sure:
            found.append(f"key {option['text']} is not sure")
        if option["letter"] not in item["key"] and possible:
            found.append(f"wrong option {option['text']} may be right")
    texts = [option["text"].casefold() for option in item["options"]]
    if len(set(texts)) < len(texts):
        found.append("two options read alike")
    if [option["letter"] for option in item["options"]] != list("ABCDEFGHIJ")[: len(texts)]:
        found.append("letters out of order")
    if direction.startswith("muscle_to_"):
        concepts = [option["concept"] for option in item["options"]]
        pairs = [(one, two) for i, one in enumerate(concepts) for two in concepts[:i]]
        found += [f"{one} and {two} overlap" for one, two in pairs if oracle.overlapping(relation, one, two)]
    return found


def _on_typed(oracle: Oracle, item: Plain) -> list[str]:
    found = []
    first, *others = (accepted["concept"] for accepted in item["accepted"])
    if not truths(oracle, item, first)[1]:
        found.append(f"{first} is not sure")
    found += [f"{one} is accepted but not recorded" for one in others if not truths(oracle, item, one)[0]]
    relation, direction = meaning(item)
    if not direction.startswith("muscle_to_"):
        missing = oracle.muscles_that_may(relation, item["subject"]) - {first, *others}
        found += [f"{one} may be right but is not accepted" for one in sorted(missing)]
    return found + _on_near(item)


def _on_free_list(oracle: Oracle, item: Plain) -> list[str]:
    relation, _ = meaning(item)
    accepted = {accepted["concept"] for accepted in item["accepted"]}
    possible = oracle.muscles_that_may(relation, item["subject"]) & oracle.listed
    sure = {muscle for muscle in possible if oracle.is_sure(relation, muscle, item["subject"])}
    found = [] if accepted == possible == sure else [f"accepted {accepted}, possible {possible}, sure {sure}"]
    if item["pick"] != len(accepted):
        found.append("the number asked for is not that of the set")
    return found + _on_near(item)


def _on_near(item: Plain) -> list[str]:
    accepted = {one["concept"] for one in item["accepted"]}
    return [f"{near['term']} is both right and wrong" for near in item["near"] if near["concept"] in accepted]
