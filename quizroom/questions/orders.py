"""Making an ordering: things to be put in the one order that nobody contests."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import partial
from hashlib import blake2s
from itertools import pairwise
from random import Random

from quizroom.questions.ask import Ask, Make
from quizroom.questions.grammar import agreeing, capitalised
from quizroom.questions.model import LETTERS, Item, Option, Reason
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.timing import seconds_for


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """One of the things to be put in order, and why it stands where it does."""

    concept: str
    text: str
    reason: Reason


Steps = Callable[[Syllabus, Ask], Sequence[Step]]
"""The things of an ask in their right order."""


def sequence_of(steps: Steps) -> Make:
    """How an ordering is made whose steps are told like this."""
    return partial(_sequence, steps)


def _sequence(steps: Steps, syllabus: Syllabus, ask: Ask, seed: int) -> Item | None:
    ordered = steps(syllabus, ask)
    texts = [step.text for step in ordered]
    if len(set(texts)) < len(texts):
        return None
    random = Random(f"{seed}/ordering/{ask.direction}/{ask.subject}/{sorted(ask.key)}")  # noqa: S311 -- a deal is to be repeatable, not secret
    options = shuffled_options(ordered, random)
    letter_of = {option.concept: option.letter for option in options}
    return Item(
        id=blake2s(f"{random.random()}/{ask.id}".encode(), digest_size=8).hexdigest(),
        family=ask.family,
        direction=ask.direction,
        format="ordering",
        subject=ask.subject,
        stem=ask.stem,
        options=options,
        key=tuple(letter_of[step.concept] for step in ordered),
        pick=len(ordered),
        accepted=(),
        near=(),
        spelling=syllabus.course.spelling,
        why=_why(ask, ordered),
        facts=ask.facts,
        muscles=ask.muscles,
        records=tuple(syllabus.record(muscle) for muscle in ask.muscles),
        seconds=seconds_for(ask.stem, texts, "ordering", len(texts)),
    )


def shuffled_options(ordered: Sequence[Step], random: Random) -> tuple[Option, ...]:
    """Lettered in an order that comes from chance alone, not from the right one."""
    steps = sorted(ordered, key=lambda step: step.concept)
    random.shuffle(steps)
    return tuple(
        Option(letter=letter, text=step.text, concept=step.concept, reason=step.reason, source="key")
        for letter, step in zip(LETTERS, steps, strict=False)
    )


def neighbour_texts(texts: Sequence[str]) -> list[str]:
    """Of each text what comes next: "A comes before B."; of the last what came before it."""
    found = [f"{_comes(one)} before {next_one}." for one, next_one in pairwise(texts)]
    return [*found, f"{_comes(texts[-1])} last, after {texts[-2]}."]


def _comes(text: str) -> str:
    return f"{capitalised(text)} {agreeing(text, 'comes', 'come')}"


def _why(ask: Ask, ordered: Sequence[Step]) -> Reason:
    sources = dict.fromkeys(source for step in ordered for source in step.reason.sources)
    text = f"The order is: {', then '.join(step.text for step in ordered)}."
    return Reason(text=text, facts=ask.facts, sources=tuple(sources))
