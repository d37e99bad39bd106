"""The sources of wrong options as values, and which of them teach."""

from collections.abc import Mapping
from types import MappingProxyType

from quizroom.questions.model import DistractorSource, Family

Rank = tuple[DistractorSource, tuple[str, ...]]
"""A source, and the concepts that it offers."""

Candidate = tuple[str, DistractorSource]
"""A wrong option with its source."""

FIRST_SEVEN: frozenset[DistractorSource] = frozenset(
    (
        *("class_error", "look_alike", "same_compartment", "neighbouring_landmark", "homologous_bone"),
        *("sibling_nerve", "sibling_artery", "antagonist"),
    )
)
"""The first seven sources of the trade, which a class is likely to mix up; arteries are taken with nerves."""

_OF_THE_FAMILY: Mapping[Family, frozenset[DistractorSource]] = MappingProxyType(
    {
        "action": frozenset(("other_joint",)),
        "prime_mover": frozenset(("other_joint",)),
        "root": frozenset(("neighbouring_segment",)),
    }
)
"""What the trade names for a family besides: the same movement elsewhere, disjoint segments nearby."""


def teaching_sources(family: Family) -> frozenset[DistractorSource]:
    """The sources that teach in a family: the first seven, and what the trade names for the family itself."""
    return FIRST_SEVEN | _OF_THE_FAMILY.get(family, frozenset())
