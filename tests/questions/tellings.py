"""Whether a text tells a fact, read from names alone: shares no code with what decides what waits."""

import re
from collections.abc import Iterator

from quizroom.knowledge.catalogue import Catalogue
from quizroom.questions.model import Item


def tells(catalogue: Catalogue, shown: Item, later: Item) -> bool:
    """Whether a record that is shown is of a muscle asked for later, or a reason names muscle and answer."""
    if {record.muscle for record in shown.records} & _muscles_in(later):
        return True
    texts = [*(option.reason.text for option in shown.options), *(one.reason.text for one in shown.stems)]
    facts = list(_named_facts(catalogue, later))
    return any(
        verb in sentence and _names_muscle(catalogue, muscle, sentence) and _names(value, sentence)
        for text in (*texts, shown.why.text)
        for sentence in re.split("[.;] ", text)
        for muscle, verb, value in facts
    )


def _muscles_in(item: Item) -> set[str]:
    """Muscles that its facts are about."""
    return {fact.partition("/")[0] for fact in item.facts} & set(item.muscles)


def _named_facts(catalogue: Catalogue, item: Item) -> Iterator[tuple[str, str, str]]:
    """Of each plain fact that is asked for the muscle, the verb of such reasons, and the value in words."""
    for fact in item.facts:
        muscle, kind, _, value = fact.split("/")
        if muscle not in catalogue.muscles:
            continue
        match kind:
            case "origin" | "insertion":
                yield muscle, "attach", catalogue.landmarks[value].label
            case "nerve":
                yield muscle, "suppl", catalogue.nerves[value].name
            case "artery":
                yield muscle, "suppl", catalogue.arteries[value].name
            case "compartment":
                yield muscle, "belong", catalogue.compartments[value].name


def _names_muscle(catalogue: Catalogue, muscle: str, text: str) -> bool:
    name = catalogue.muscles[muscle].name
    for longer in (one.name for one in catalogue.muscles.values() if name in one.name and name != one.name):
        text = re.sub(re.escape(longer), "", text, flags=re.IGNORECASE)
    return _names(name, text)


def _names(name: str, text: str) -> bool:
    return re.search(rf"\b{re.escape(name)}\b", text, flags=re.IGNORECASE) is not None
