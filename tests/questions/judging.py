"""The oracle's judgement of single items, given as plain values."""

import re
from typing import Any

from tests.questions import cuts
from tests.questions.odd_ones import oddities, shared
from tests.questions.oracle import Oracle
from tests.questions.overlaps import same_action
from tests.questions.placed import on_matching, on_ordering
from tests.questions.possible import may_be, muscles_that_may, overlapping

Plain = dict[str, Any]
RELATIONS = {
    "origin": "origin",
    "insertion": "insertion",
    "action": "action",
    "prime_mover": "prime",
    "joint": "crossing",
    "nerve": "nerve",
    "root": "root",
    "artery": "artery",
    "compartment": "compartment",
    "name": "meaning",
    "antagonist": "action",
    "two_step": "action",
}
SETS = {"nerve": "nerve", "site": "attachment", "prime": "prime", "compartment": "compartment"}
NUMBERS = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6}
EXPECTATION = "Textbook expectation for a complete lesion; patients vary."


def complaints(oracle: Oracle, item: Plain) -> list[str]:
    """Everything that is unfair about an item; empty if it is just."""
    if item["format"] == "ordering":
        found = list(on_ordering(oracle, item))
    elif item["format"] == "matching":
        found = list(on_matching(oracle, item, truths))
    else:
        found = _on_single(oracle, item)
    return [f"{item['family']}: {item['stem']} -> {complaint}" for complaint in found]


def _on_single(oracle: Oracle, item: Plain) -> list[str]:
    return {
        "one_best": _on_one_best,
        "pick_n": _on_pick_n,
        "typed": _on_typed,
        "free_list": _on_free_list,
    }[item["format"]](oracle, item)


def meaning(item: Plain) -> tuple[str, str]:
    """The relation that an item is about, and the direction it goes."""
    family, direction = str(item["family"]), str(item["direction"])
    if family == "look_alike" and ":" in direction:
        family, direction = direction.split(":")
    if family == "set":
        return SETS[direction.partition("_")[0]], direction
    if family == "odd_one_out":
        return direction.removeprefix("by_"), direction
    return RELATIONS.get(family, direction), direction


def truths(oracle: Oracle, item: Plain, concept: str) -> tuple[bool, bool]:
    """Whether an option may be right by any reading, and whether it surely is."""
    relation, direction = meaning(item)
    subject: str = item["subject"]
    if item["family"] == "lesion":
        return _truths_of_lesion(oracle, direction, subject, concept)
    match direction:
        case "landmark_to_bone":
            place = oracle.text.landmarks[subject]
            return concept in oracle.bones_with(place["name"]), concept in place["bones"]
        case "meaning_to_movement":
            means = oracle.text.movements[concept.partition(".")[2]]["meaning"].split(";")[0]
            return means in item["stem"], means in item["stem"]
        case "movement_to_opposite":
            return _truths_of_opposite(oracle, subject, concept)
        case "muscle_to_opponent":
            return _truths_of_opponent(oracle, subject, concept)
        case "action_and_nerve_to_muscle":
            return _truths_of_two_steps(oracle, subject, concept)
    if direction.startswith("muscle_to_"):
        holder = subject if relation not in ("action", "prime") else subject.partition("/")[0]
        return may_be(oracle.text, relation, holder, concept), oracle.is_sure(relation, subject, concept)
    return may_be(oracle.text, relation, concept, subject), oracle.is_sure(relation, concept, subject)


def _truths_of_lesion(oracle: Oracle, direction: str, subject: str, concept: str) -> tuple[bool, bool]:
    text = oracle.text
    match direction:
        case "injury_to_lost":
            return cuts.may_be_lost(text, subject, concept), cuts.is_lost(oracle, subject, concept)
        case "muscle_to_injury":
            return cuts.may_be_lost(text, concept, subject), cuts.is_lost(oracle, concept, subject)
        case "injury_to_spared":
            return cuts.may_be_spared(text, subject, concept), not cuts.may_be_lost(text, subject, concept)
        case "injury_to_movement":
            return cuts.may_fail(text, subject, concept), cuts.fails(oracle, subject, concept)
        case _:
            return cuts.may_fail(text, concept, subject), cuts.fails(oracle, concept, subject)


def _truths_of_opposite(oracle: Oracle, movement: str, concept: str) -> tuple[bool, bool]:
    joint, _, other = concept.partition(".")
    opposite = oracle.text.movements[movement]["antagonist"]
    return same_action(concept, f"{joint}.{opposite}") or other == movement, other == opposite


def _truths_of_opponent(oracle: Oracle, subject: str, concept: str) -> tuple[bool, bool]:
    """Whether a muscle may do the opposite; surely if it leads it and can do nothing on the same side."""
    holder, _, action = subject.partition(":")
    joint, _, movement = action.partition(".")
    opposite = f"{joint}.{oracle.text.movements[movement]['antagonist']}"
    against = oracle.is_sure("prime", concept, opposite) and oracle.is_sure("action", holder, action)
    sure = against and not may_be(oracle.text, "action", concept, action)
    return may_be(oracle.text, "action", concept, opposite) or concept == holder.partition("/")[0], sure


def _truths_of_two_steps(oracle: Oracle, subject: str, concept: str) -> tuple[bool, bool]:
    action, _, nerve = subject.partition(":")
    parts = [f"{concept}/{row['id']}" for row in oracle.text.muscles[concept].get("parts", [])] or [concept]
    sure = any(oracle.is_sure("action", one, action) and oracle.is_sure("nerve", one, nerve) for one in parts)
    text = oracle.text
    return may_be(text, "action", concept, action) and may_be(text, "nerve", concept, nerve), sure


def _on_one_best(oracle: Oracle, item: Plain) -> list[str]:
    found = _on_options(oracle, item)
    if len(item["key"]) != 1 or item["pick"] != 1:
        found.append("not one key")
    if not 3 <= len(item["options"]) <= 5:
        found.append(f"{len(item['options'])} options")
    if item["family"] == "lesion":
        reasons = [item["why"]["text"], *(option["reason"]["text"] for option in item["options"])]
        found += ["no word on patients" for reason in reasons if EXPECTATION not in reason]
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
    if item["family"] == "odd_one_out":
        return _on_form(item) + _on_odd_one(oracle, item)
    found = _on_form(item)
    relation, direction = meaning(item)
    for option in item["options"]:
        possible, sure = truths(oracle, item, option["concept"])
        if option["letter"] in item["key"] and not sure:
            found.append(f"key {option['text']} is not sure")
        if option["letter"] not in item["key"] and possible:
            found.append(f"wrong option {option['text']} may be right")
    if direction.startswith("muscle_to_") and item["family"] not in ("lesion", "antagonist"):
        concepts = [option["concept"] for option in item["options"]]
        pairs = [(one, two) for i, one in enumerate(concepts) for two in concepts[:i]]
        found += [f"{a} and {b} overlap" for a, b in pairs if overlapping(oracle.text, relation, a, b)]
    return found


def _on_odd_one(oracle: Oracle, item: Plain) -> list[str]:
    relation, _ = meaning(item)
    concepts = {option["letter"]: option["concept"] for option in item["options"]}
    four, odd = list(concepts.values()), concepts[item["key"][0]]
    found = oddities(oracle, four, odd, relation)
    if item["subject"] not in shared(oracle, four, odd, relation):
        found.append(f"the others do not share {item['subject']}")
    if len(four) != 4:
        found.append("not four")
    return found


def _on_form(item: Plain) -> list[str]:
    found = []
    texts = [option["text"].casefold() for option in item["options"]]
    if len(set(texts)) < len(texts):
        found.append("two options read alike")
    if [option["letter"] for option in item["options"]] != list("ABCDEFGHIJ")[: len(texts)]:
        found.append("letters out of order")
    return found


def _on_typed(oracle: Oracle, item: Plain) -> list[str]:
    found = []
    first, *others = (accepted["concept"] for accepted in item["accepted"])
    if not truths(oracle, item, first)[1]:
        found.append(f"{first} is not sure")
    found += [f"{one} is accepted but not recorded" for one in others if not truths(oracle, item, one)[0]]
    relation, direction = meaning(item)
    if not direction.startswith("muscle_to_"):
        missing = _others_that_may(oracle, relation, item["subject"], first) - {first, *others}
        found += [f"{one} may be right but is not accepted" for one in sorted(missing)]
    return found + _on_near(item)


def _others_that_may(oracle: Oracle, relation: str, value: str, first: str) -> set[str]:
    """What else might be typed: other muscles, and of a head's own muscle the other heads."""
    muscle, _, part = first.partition("/")
    muscles = muscles_that_may(oracle.text, relation, value)
    if not part:
        return set(muscles)
    heads = (f"{muscle}/{row['id']}" for row in oracle.text.muscles[muscle]["parts"])
    return set(muscles - {muscle}) | {head for head in heads if may_be(oracle.text, relation, head, value)}


def _on_free_list(oracle: Oracle, item: Plain) -> list[str]:
    relation, _ = meaning(item)
    accepted = {accepted["concept"] for accepted in item["accepted"]}
    possible = muscles_that_may(oracle.text, relation, item["subject"]) & oracle.listed
    sure = {muscle for muscle in possible if oracle.is_sure(relation, muscle, item["subject"])}
    found = [] if accepted == possible == sure else [f"accepted {accepted}, possible {possible}, sure {sure}"]
    if item["pick"] != len(accepted):
        found.append("the number asked for is not that of the set")
    return found + _on_near(item)


def _on_near(item: Plain) -> list[str]:
    accepted = {one["concept"] for one in item["accepted"]}
    both = [f"{near['term']} is both right and wrong" for near in item["near"] if near["concept"] in accepted]
    counting = [near["term"] for near in item["near"] if near["worth"] != "none" and len(accepted) != 1]
    return both + [f"{term} is taken for one of several" for term in counting]
