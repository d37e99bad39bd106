"""How a row may stand to the content, and how verdicts on several things are joined."""

from collections.abc import Iterable, Iterator, Mapping
from fnmatch import fnmatchcase
from functools import cache
from typing import Literal, NamedTuple

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import Fact, FactKind, facts_of
from quizroom.knowledge.model import Muscle
from tests.reference.rows import Target

Aspect = Literal[
    "origin bone",
    "insertion bone",
    "either bone",
    "landmark",
    "nerve",
    "artery",
    "action",
    "joint crossed",
    "compartment",
    "id",
    "name",
]
Verdict = Literal["agrees", "disagrees", "not comparable", "left out"]
RANKS: tuple[Verdict, ...] = ("disagrees", "agrees")


class Judgement(NamedTuple):
    """What one row says about one aspect, held against the content."""

    aspect: Aspect
    verdict: Verdict


def joined(verdicts: Iterable[Verdict]) -> Verdict:
    """The verdict on a row that claims several things, or is about several muscles: the worst counts."""
    met = set(verdicts)
    return next((one for one in RANKS if one in met), "not comparable")


def held(*, told: bool, recorded: bool) -> Verdict:
    """Whether what a row tells, if it tells anything that can be held against the content, is recorded."""
    if not told:
        return "not comparable"
    return "agrees" if recorded else "disagrees"


def facts_about(catalogue: Catalogue, target: Target, *kinds: FactKind) -> Iterator[Fact]:
    """The facts of some kinds, of every status, about a muscle, or about one part of it and its whole."""
    for fact in _facts(catalogue.muscles[target.muscle]):
        if fact.kind in kinds and (not target.part or fact.part in ("", target.part)):
            yield fact


@cache
def _facts(muscle: Muscle) -> tuple[Fact, ...]:
    return tuple(facts_of(muscle))


def meant(table: Mapping[str, list[str]], word: str) -> list[str]:
    """What a word of a table means; a key with `*` or `?` stands for many words."""
    if word in table:
        return table[word]
    return next((ours for key, ours in table.items() if fnmatchcase(word, key)), [])
