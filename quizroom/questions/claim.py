"""What the content says of every muscle, relation by relation, and how sure a question may be of it.

A claim is *certain* if it may be a key: recorded as core, or ruled to be the key by the course.
Every other recorded reading is true enough never to be called wrong. An assistant in one book is a
mover in the next: as prime mover it is neither key nor wrong option.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, get_args

from quizroom.questions.overlap import Overlap

Relation = Literal[
    "origin",
    "insertion",
    "attachment",
    "nerve",
    "root",
    "artery",
    "action",
    "prime",
    "crossing",
    "compartment",
    "meaning",
]
RELATIONS: tuple[Relation, ...] = get_args(Relation)


@dataclass(frozen=True, slots=True, kw_only=True)
class Claim:
    """One reading: this muscle (or part of it) has this value. `facts` are what it rests on."""

    muscle: str
    part: str
    value: str
    certain: bool
    usual: bool
    """The standard account under the course's rulings; a certain claim is usual and fit to be asked."""
    accepted: bool
    """Whether a typed answer may say so: usual, or a variant that the course takes."""
    facts: tuple[str, ...]
    sources: tuple[str, ...]
    id: str = ""
    """Id of what is asked: that of the fact, or one made alike for what is derived."""


@dataclass(frozen=True, slots=True, kw_only=True)
class ClaimTable:
    """All claims of one relation.

    `overlap` gives what may not stand beside a value as another option; `reach` gives the values
    that make a muscle count for a value, as a branch counts for its nerve.
    """

    by_muscle: Mapping[str, tuple[Claim, ...]]
    by_value: Mapping[str, tuple[Claim, ...]]
    overlap: Overlap
    reach: Overlap
