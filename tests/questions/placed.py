"""The oracle's judgement of orderings and matchings, by its own reading of the content."""

from collections import Counter
from collections.abc import Callable, Iterator
from itertools import combinations
from typing import Any

from tests.questions.along_limbs import is_proximal_to, joints_in_turn
from tests.questions.oracle import Oracle
from tests.questions.overlaps import all_above
from tests.questions.possible import readings

Plain = dict[str, Any]
Truths = Callable[[Oracle, Plain, str], tuple[bool, bool]]
SCALES = (
    ["superficial", "intermediate", "deep"],
    ["external", "internal", "innermost"],
    ["first layer", "second layer", "third layer", "fourth layer"],
)


def on_ordering(oracle: Oracle, item: Plain) -> Iterator[str]:
    """What is wrong with an ordering: every pair must stand in a strict order by every reading."""
    yield from _on_letters(item)
    letters = [option["letter"] for option in item["options"]]
    if sorted(item["key"]) != letters or not 3 <= len(letters) <= 5 or item["pick"] != len(letters):
        yield "not all of three to five letters are in the key"
    concept_of = {option["letter"]: option["concept"] for option in item["options"]}
    ordered = [concept_of[letter] for letter in item["key"]]
    judge = {
        "nerve_path": _on_nerves,
        "artery_path": _on_arteries,
        "superficial_to_deep": _on_layers,
        "insertions_along_limb": _on_insertions,
        "way_of_muscle": _on_way,
    }[item["direction"]]
    yield from judge(oracle, item, ordered)


def on_matching(oracle: Oracle, item: Plain, truths: Truths) -> Iterator[str]:
    """What is wrong with a matching: each row must have one right option and no other that may be right."""
    yield from _on_letters(item)
    family, direction = item["direction"].split(":")
    if not 3 <= len(item["stems"]) <= 5 or not len(item["stems"]) < len(item["options"]) <= 8:
        yield f"{len(item['stems'])} rows and {len(item['options'])} options"
    if len(item["key"]) != len(item["stems"]) or item["pick"] != len(item["stems"]):
        yield "not one key for each row"
    if max(Counter(stem["text"] for stem in item["stems"]).values()) > 1:
        yield "two rows read alike"
    for stem, key in zip(item["stems"], item["key"], strict=True):
        row = {"family": family, "direction": direction, "subject": stem["concept"], "stem": stem["text"]}
        for option in item["options"]:
            possible, sure = truths(oracle, row, option["concept"])
            if option["letter"] == key and not sure:
                yield f"{stem['text']}: key {option['text']} is not sure"
            if option["letter"] != key and possible:
                yield f"{stem['text']}: {option['text']} may be right too"


def _on_letters(item: Plain) -> Iterator[str]:
    texts = [option["text"].casefold() for option in item["options"]]
    if len(set(texts)) < len(texts):
        yield "two options read alike"
    if [option["letter"] for option in item["options"]] != list("ABCDEFGHIJ")[: len(texts)]:
        yield "letters out of order"


def _on_nerves(oracle: Oracle, item: Plain, ordered: list[str]) -> Iterator[str]:
    yield from _on_tree(oracle, "nerves", ordered)
    if not oracle.is_sure("nerve", item["subject"], ordered[-1]):
        yield "it is not the nerve of the muscle"
    muscle, _, part = item["subject"].partition("/")
    rows = [
        row
        for row in oracle.text.muscles[muscle]["nerves"]
        if row["nerve"] == ordered[-1] and (not part or row.get("part", "") in ("", part))
    ]
    segments = [set(row["roots"]) for row in rows]
    ways = [
        set(oracle.text.nerves[nerve]["roots"]) for nerve in ordered if oracle.text.nerves[nerve].get("roots")
    ]
    if ways and not any(set.intersection(roots, *ways) for roots in segments):
        yield "no fiber of the muscle passes all of them"


def _on_arteries(oracle: Oracle, item: Plain, ordered: list[str]) -> Iterator[str]:
    yield from _on_tree(oracle, "arteries", ordered)
    if not oracle.is_sure("artery", item["subject"], ordered[-1]):
        yield "it is not an artery of the muscle"


def _on_tree(oracle: Oracle, tree: str, ordered: list[str]) -> Iterator[str]:
    for one, other in combinations(ordered, 2):
        if one not in all_above(oracle.text, tree, other) or other in all_above(oracle.text, tree, one):
            yield f"{one} does not lie before {other}"


def _on_layers(oracle: Oracle, item: Plain, ordered: list[str]) -> Iterator[str]:
    files = [oracle.text.muscles[muscle] for muscle in ordered]
    if {file["compartment"] for file in files} != {item["subject"]}:
        yield "not all are of one compartment"
    layers = [file["layer"] for file in files]
    scales = [[scale.index(layer) for layer in layers] for scale in SCALES if set(layers) <= set(scale)]
    if not scales or any(one >= other for one, other in combinations(scales[0], 2)):
        yield f"layers {layers}"
    if any(row["about"] in ("layer", "compartment") for file in files for row in file.get("differ", [])):
        yield "books differ on a layer"


def _on_insertions(oracle: Oracle, _: Plain, ordered: list[str]) -> Iterator[str]:
    text = oracle.text
    for one, other in combinations(ordered, 2):
        pairs = [
            (text.landmarks[near.value], text.landmarks[far.value])
            for near in readings(text, "insertion", one)
            for far in readings(text, "insertion", other)
        ]
        if not pairs or not all(is_proximal_to(near, far) for near, far in pairs):
            yield f"{one} may not insert proximal to {other}"


def _on_way(oracle: Oracle, item: Plain, ordered: list[str]) -> Iterator[str]:
    first, *joints, last = ordered
    subject = item["subject"]
    if not oracle.is_sure("origin", subject, first) or not oracle.is_sure("insertion", subject, last):
        yield "an end is not sure"
        return
    muscle = subject.partition("/")[0]
    turned = {row.value for row in readings(oracle.text, "insertion", muscle)} & {first}
    turned |= {row.value for row in readings(oracle.text, "origin", muscle)} & {last}
    if turned:
        yield f"{turned} may be the other end as well"
    if not all(oracle.is_sure("crossing", subject, joint) for joint in joints):
        yield "a joint is not surely crossed"
    for start in oracle.text.landmarks[first]["bones"]:
        for end in oracle.text.landmarks[last]["bones"]:
            if not joints_in_turn(oracle.text, start, end, joints):
                yield f"from {start} to {end} the joints do not follow in this order"
