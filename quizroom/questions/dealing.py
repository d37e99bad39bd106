"""The hand from which a review is dealt: what is left to ask, and what has been shown already."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from itertools import islice
from random import Random

from quizroom.questions.ask import Ask
from quizroom.questions.build import build_item
from quizroom.questions.experience import NO_EXPERIENCE, ClassExperience
from quizroom.questions.families import asks_of
from quizroom.questions.formats import TYPED_ONE_IN
from quizroom.questions.model import TYPED_FORMATS, Family, Format, Item
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.waiting import can_stand_between, reasons_of

_MUSCLES_LOOKED_AT = 12
"""Muscles tried for a question that nothing shown before gives away, before one is taken all the same."""
_ASKS_LOOKED_AT = 8
"""And asks about each of these."""
Drawback = tuple[int, bool]
Hands = dict[str, tuple[Ask, ...] | list[Ask]]
"""What is left to ask by first muscle: a tuple until it is first looked at, then a shuffled list."""


@dataclass(slots=True, kw_only=True)
class Dealing:
    """The state of a deal. `left` holds what may still be asked, by family and first muscle."""

    syllabus: Syllabus
    formats: tuple[Format, ...]
    random: Random
    seed: int
    left: dict[Family, Hands]
    experience: ClassExperience = NO_EXPERIENCE
    turn: dict[str, float]
    """When the turn of each muscle comes: after as many rounds as it was shown in, ties broken by chance."""
    dealt: Counter[Family] = field(default_factory=Counter)
    covered: Counter[str] = field(default_factory=Counter)
    asked: set[str] = field(default_factory=set)
    """Facts asked already, never to be asked again."""
    questions: set[tuple[str, str]] = field(default_factory=set)
    """Direction and subject of what was asked: the same question with another key confuses a class."""
    told: set[str] = field(default_factory=set)
    """Facts that the reasons of a round before have told."""
    before: tuple[Item, ...] = ()
    """Where one place of a review is dealt anew: the rounds before it, and `after` those after it."""
    after: tuple[Item, ...] = ()
    rounds: int = 0
    typed: int = 0
    """Rounds dealt that are answered by typing."""

    @property
    def wants_typed(self) -> bool:
        """Whether the next round should be typed, if it can be."""
        return self.typed * TYPED_ONE_IN < self.rounds + 1


def start_dealing(  # noqa: PLR0917 -- what is dealt, of what, by which draw
    syllabus: Syllabus,
    families: tuple[Family, ...],
    formats: tuple[Format, ...],
    random: Random,
    seed: int,
    experience: ClassExperience = NO_EXPERIENCE,
) -> Dealing:
    """A fresh hand."""
    left: dict[Family, Hands] = {family: dict(_hands(syllabus, family, formats)) for family in families}
    turn = {muscle: random.random() for muscle in syllabus.muscles}
    return Dealing(
        syllabus=syllabus,
        formats=formats,
        random=random,
        seed=seed,
        left=left,
        turn=turn,
        experience=experience,
    )


def within_regions(dealing: Dealing, regions: Sequence[str]) -> Dealing:
    """The hand without what is asked of muscles of other regions; as it is if no region is named."""
    if regions:
        muscles = dealing.syllabus.catalogue.muscles
        for family, hands in dealing.left.items():
            here = {one: asks for one, asks in hands.items() if muscles[one].region in regions}
            dealing.left[family] = here
    return dealing


@lru_cache(maxsize=64)
def _hands(syllabus: Syllabus, family: Family, formats: tuple[Format, ...]) -> Mapping[str, tuple[Ask, ...]]:
    """What a family can ask in these formats, by first muscle; remembered as the asks are."""
    hands: dict[str, list[Ask]] = {}
    for ask in asks_of(syllabus, family):
        if any(one in formats for one in ask.formats):
            hands.setdefault(ask.muscles[0], []).append(ask)
    return {muscle: tuple(asks) for muscle, asks in hands.items()}


def next_item(dealing: Dealing, family: Family | None = None) -> Item | None:
    """The next item, of the given family if it has any left, else of the one dealt least.

    None if all is asked.
    """
    turn = {one: dealing.random.random() for one in dealing.left}
    families = sorted(turn, key=lambda one: (one != family, dealing.dealt[one], turn[one]))
    for one in families:
        item = _item_of(dealing, one)
        if item is not None:
            take_note(dealing, item, shown=True)
            return item
    return None


def take_note(dealing: Dealing, item: Item, *, shown: bool) -> None:
    """Remember an item: its facts are not asked again, and if it is shown its records tell everything."""
    dealing.asked.update(item.facts)
    if shown:
        dealing.rounds += 1
        dealing.dealt[item.family] += 1
        dealing.typed += item.format in TYPED_FORMATS
        dealing.questions.add(_question(item))
        dealing.covered.update(item.muscles)
        for muscle in item.muscles:
            dealing.turn[muscle] = dealing.turn.get(muscle, 0) + 1
        for reason in reasons_of(item):
            dealing.told.update(reason.facts)


def _item_of(dealing: Dealing, family: Family) -> Item | None:
    hands = dealing.left[family]
    while True:
        ask = _best_ask(dealing, hands)
        if ask is None:
            return None
        hands[ask.muscles[0]] = [one for one in hands[ask.muscles[0]] if one is not ask]
        taught = dealing.experience.with_errors(ask)
        item = build_item(dealing.syllabus, taught, _format(dealing, ask), dealing.seed)
        if item is not None and can_stand_between(item, dealing.before, dealing.after):
            return item


def _best_ask(dealing: Dealing, hands: Hands) -> Ask | None:
    """An ask about the muscle that was shown least, best one that nothing shown gives away."""
    best: tuple[Drawback, Ask] | None = None
    for least, drawback, ask in islice(_firsts(dealing, hands), _MUSCLES_LOOKED_AT):
        if best is None or drawback < best[0]:
            best = drawback, ask
        if best[0] <= least:
            break
    return best[1] if best else None


def _firsts(dealing: Dealing, hands: Hands) -> Iterator[tuple[Drawback, Drawback, Ask]]:
    """For each muscle whose turn it is, the ask that is given away least.

    With the least drawback that any ask about it, or about a later muscle, can have, and its own.
    """
    typed_next, formats = dealing.wants_typed, dealing.formats
    for muscle in sorted(hands, key=dealing.turn.__getitem__):
        least = (2 * (muscle in dealing.covered), False)
        best: tuple[Drawback, Ask] | None = None
        for ask in _hand(dealing, hands, muscle)[:_ASKS_LOOKED_AT]:
            drawback = (_given_away(dealing, ask), typed_next and not _typed_among(ask.formats, formats))
            if best is None or drawback < best[0]:
                best = drawback, ask
            if drawback == least:
                break
        if best:
            yield least, *best


def _hand(dealing: Dealing, hands: Hands, muscle: str) -> list[Ask]:
    """What is left to ask of a muscle, in an order by chance; what was asked since is thrown away."""
    asks = hands[muscle]
    if isinstance(asks, tuple):
        asks = dealing.random.sample(asks, len(asks))
    left = hands[muscle] = [ask for ask in asks if dealing.asked.isdisjoint(ask.facts)]
    if not left:
        del hands[muscle]
    return left


def _given_away(dealing: Dealing, ask: Ask) -> int:
    """How much would have to wait for this question, or hint at it.

    Two for each record, and for a question that stood in the review already with another key; one if a reason
    told its fact, and one if a muscle comes back that the question does not name: that its record is missing
    would tell who it is.
    """
    told = (not dealing.told.isdisjoint(ask.facts)) + 2 * (_question(ask) in dealing.questions)
    if dealing.covered.keys().isdisjoint(ask.muscles):
        return told
    back = [muscle for muscle in ask.muscles if muscle in dealing.covered]
    hinted = set(back) != {ask.subject.partition("/")[0]}
    return 2 * len(back) + hinted + told


def _question(asked: Ask | Item) -> tuple[str, str]:
    """What stands in the stem, whichever family asks: "site_to_muscle" of a site."""
    return asked.direction.rpartition(":")[2], asked.subject


def _format(dealing: Dealing, ask: Ask) -> Format:
    typed = _typed_among(ask.formats, dealing.formats)
    lettered = [one for one in ask.formats if one in dealing.formats and one not in TYPED_FORMATS]
    if typed and (not lettered or dealing.wants_typed):
        return typed[0]
    return lettered[0]


@lru_cache(maxsize=256)
def _typed_among(possible: tuple[Format, ...], wanted: tuple[Format, ...]) -> tuple[Format, ...]:
    return tuple(one for one in possible if one in wanted and one in TYPED_FORMATS)
