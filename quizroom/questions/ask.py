"""What could be asked: one fact in one direction, before options are chosen."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from random import Random

from quizroom.questions.claim import Relation
from quizroom.questions.model import Family, Format, Item, Reason
from quizroom.questions.ranks import Candidate, Rank
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.words import OptionKind


@dataclass(frozen=True, slots=True, kw_only=True)
class Ask:
    """A question in the making.

    Options are either values of a unit (`unit` is a muscle or part) or muscles of a value (`value`
    is a site, a nerve, ...): the other of the two is empty.
    """

    family: Family
    direction: str
    subject: str
    relation: Relation
    kind: OptionKind
    key: tuple[str, ...]
    barred: frozenset[str]
    """What may be true by any reading, and so is no wrong option."""
    facts: tuple[str, ...]
    muscles: tuple[str, ...]
    unit: tuple[str, str] | None = None
    value: str = ""
    formats: tuple[Format, ...] = ("one_best",)
    stem: str
    """For lettered options."""
    wording: str = ""
    """For typed answers."""
    also: tuple[str, ...] = ()
    """What a typed answer may also say: accepted variants."""
    leads: tuple[str, ...] = ()
    """Look-alikes that must be among the wrong options, as far as they are not barred."""
    errors: tuple[str, ...] = ()
    """What classes really took for the key, the most frequent first: the first wrong options."""
    ranks: "Ranks | None" = None
    """Where wrong options come from, if not from where those of the kind usually do."""
    pick: "Pick | None" = None
    """How wrong options are chosen, if they must fit together in a way of their own."""
    tell: "Tell | None" = None
    """The reason of an option, if the relation alone does not tell it."""
    tell_why: "TellWhy | None" = None
    """Why the key is the key, if its reason does not tell it."""
    make: "Make | None" = None
    """How the item is made, where it is no single question: an ordering, a matching."""

    @property
    def id(self) -> str:
        """The same for the same question, whatever its options."""
        return f"{self.family}:{self.direction}:{self.subject}:{'+'.join(self.key)}"


Ranks = Callable[[Syllabus, Ask], Iterable[Rank]]
Pick = Callable[[Syllabus, Ask, Random], Sequence[Candidate] | None]
Tell = Callable[[Syllabus, Ask, str], Reason]
TellWhy = Callable[[Syllabus, Ask], Reason]
Make = Callable[[Syllabus, Ask, int], Item | None]
"""From an ask and a seed to the item; None if it cannot be made fairly."""
