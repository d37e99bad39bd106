"""How lists, spinal segments and single facts are written out."""

from collections.abc import Sequence

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import Fact, slug
from quizroom.knowledge.model import Action, Attachment, Blood, Muscle, Supply
from quizroom.knowledge.segments import span


def listed(words: Sequence[str]) -> str:
    """A list in a sentence: "a", "a and b", "a, b and c"."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} and {words[-1]}"


def muscle_name(catalogue: Catalogue, muscle_id: str, part: str = "") -> str:
    """The muscle, or "long head of biceps brachii" for a part of it."""
    muscle = catalogue.muscles[muscle_id]
    return f"{part_name(muscle, part)} of {muscle.name}" if part else muscle.name


def part_name(muscle: Muscle, part: str) -> str:
    """The name of a part; its id if the muscle does not know it."""
    return next((one.name for one in muscle.parts if one.id == part), part)


def site_text(catalogue: Catalogue, row: Attachment) -> str:
    """The landmark with its bone, and the finer words in brackets."""
    label = catalogue.landmarks[row.site].label
    return f"{label} ({row.detail})" if row.detail else label


def fact_text(catalogue: Catalogue, fact: Fact) -> str:
    """A fact as one line: "long head of biceps brachii: origin: supraglenoid tubercle of the scapula"."""
    holder = muscle_name(catalogue, fact.muscle, fact.part)
    return f"{holder}: {fact.kind}: {_value_text(catalogue, fact)}"


def _value_text(catalogue: Catalogue, fact: Fact) -> str:
    muscle = catalogue.muscles[fact.muscle]
    match fact.row:
        case Attachment():
            return site_text(catalogue, fact.row)
        case Action():
            movement, joint = catalogue.movements[fact.row.movement], catalogue.joints[fact.row.joint]
            return f"{movement.name} at the {joint.name}"
        case Supply():
            name, roots = catalogue.nerves[fact.row.nerve].name, span(fact.row.roots)
            return f"{name} ({roots})" if roots else name
        case Blood():
            return catalogue.arteries[fact.row.artery].name
        case None:
            return _plain_text(catalogue, muscle, fact)


def _plain_text(catalogue: Catalogue, muscle: Muscle, fact: Fact) -> str:
    if fact.kind == "compartment":
        return catalogue.compartments[muscle.compartment].name
    if fact.kind == "meaning":
        return muscle.meaning
    terms = (muscle.name, *(name.term for name in muscle.names))
    return next((term for term in terms if slug(term) == fact.value), fact.value)
