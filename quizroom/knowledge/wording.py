"""How lists, and muscles with their parts and sites, are written out."""

from collections.abc import Sequence

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Attachment, Muscle


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
