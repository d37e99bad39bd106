"""The joints that a muscle passes over."""

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.index import Crossing

_NONE = Crossing(core=(), recorded=(), possible=())


def joints_crossed(catalogue: Catalogue, muscle: str, part: str = "") -> tuple[str, ...]:
    """Joints between origin and insertion by the core attachments, proximal to distal.

    Without a part: those that any part crosses.
    """
    return catalogue.index.crossings.get((muscle, part), _NONE).core


def joints_recorded(catalogue: Catalogue, muscle: str, part: str = "") -> tuple[str, ...]:
    """As `joints_crossed`, by the attachments of every status."""
    return catalogue.index.crossings.get((muscle, part), _NONE).recorded


def joints_possibly_crossed(catalogue: Catalogue, muscle: str, part: str = "") -> tuple[str, ...]:
    """Joints on any way between any recorded attachments: none of them may be called wrong."""
    return catalogue.index.crossings.get((muscle, part), _NONE).possible


def parts_crossing(catalogue: Catalogue, muscle: str, joint: str) -> tuple[str, ...]:
    """The parts whose core attachments span the joint; empty if the muscle has no parts."""
    parts = (part.id for part in catalogue.muscles[muscle].parts)
    return tuple(part for part in parts if joint in joints_crossed(catalogue, muscle, part))
