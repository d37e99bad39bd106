"""Marking the answer to a look. Nothing is stored of it: it follows from the answer and the item."""

from dataclasses import dataclass
from typing import Literal

from quizroom.marking import mark_of
from quizroom.questions.model import Item
from quizroom.room.answers import canonical, refuse_misfit
from quizroom.room.refusals import Refused
from quizroom.room.state import Answer
from quizroom.second_look.asked import GivenAnswer
from quizroom.second_look.sighting import Said
from quizroom.views.look import contrast_of, verdicts_of

LookVerdict = Literal["right", "part", "wrong", "doubtful", "none"]


FOR_A_PERSON = "Only a person could tell what was meant. Compare it with the record; it counts neither way."


@dataclass(frozen=True, slots=True, kw_only=True)
class JudgedLook:
    """An answer with its verdict, its mark from 0 to 1, and why in a sentence or two."""

    said: Said
    verdict: LookVerdict
    mark: float
    because: str


def fitting(
    item: Item, choice: tuple[str, ...], typed: tuple[str, ...]
) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The one form of an answer; blank if it does not fit the item."""
    said = canonical(item, choice, typed)
    try:
        refuse_misfit(item, said)
    except Refused:
        return (), ()
    return said


def judged_look(item: Item, given: GivenAnswer) -> JudgedLook:
    """Judge an answer. A blank one was not known; a doubtful one tells nothing, for nobody can rule on it."""
    if not any(given.choice) and not given.typed:
        said = Said(answer=None, mark=0.0, took_ms=given.took_ms, certainty=given.certainty)
        return JudgedLook(said=said, verdict="none", mark=0.0, because=item.why.text)
    answer = Answer(choice=given.choice, typed=given.typed, at=given.answered_at)
    mark = mark_of(item, answer)
    verdicts = verdicts_of(item, answer)
    doubtful = mark < 1.0 and any(found.kind == "doubtful" for found in verdicts.values())
    if doubtful and mark == 0.0:
        said = Said(answer=answer, mark=None, took_ms=given.took_ms, certainty=given.certainty)
        return JudgedLook(said=said, verdict="doubtful", mark=0.0, because=FOR_A_PERSON)
    because = contrast_of(item, answer, verdicts) if mark < 1.0 else None
    if answer.typed and because is None:
        because = " ".join(found.because for found in verdicts.values())
    return JudgedLook(
        said=Said(
            answer=answer,
            mark=None if doubtful else mark,
            took_ms=given.took_ms,
            certainty=given.certainty,
        ),
        verdict=_verdict(mark),
        mark=round(mark, 4),
        because=because or item.why.text,
    )


def _verdict(mark: float) -> LookVerdict:
    if mark == 1.0:
        return "right"
    return "part" if mark > 0.0 else "wrong"
