"""The marks of everybody who answered a round, which are not worked out again while nothing changes."""

from collections import Counter
from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType

from quizroom.marking.answers import judge, mark_of, mark_of_words
from quizroom.marking.model import RoundMarks
from quizroom.questions.model import Item
from quizroom.questions.typed import Verdict
from quizroom.room.answers import Said
from quizroom.room.state import Answer, Round

NO_ANSWERS: Mapping[str, Answer] = MappingProxyType({})


def counts(current: Round) -> bool:
    """Whether a round is part of anybody's marks: its result known to all, and its item not struck.

    So a held result cannot be read from marks and standings.
    """
    return current.shown_at is not None and not current.struck


def as_second(current: Round) -> Round:
    """The round as if its second answers were all its answers."""
    return replace(
        current, answers=current.second_answers, second_answers=NO_ANSWERS, bench_answers=NO_ANSWERS
    )


def marks_of_round(current: Round, known: RoundMarks | None) -> RoundMarks:
    """The marks of a round; `known` itself where it was made from the same item, answers and rulings."""
    # The fold shares an unchanged mapping of answers, so identity is enough to know it again.
    if known is not None and _is_of(known, current):
        return known
    verdicts = _verdicts(current, known)
    worth: dict[Said, float] = {}
    times: Counter[Said] = Counter()
    marks: dict[str, float] = {}
    for player, answer in current.answers.items():
        said = (answer.choice, answer.typed)
        if said not in worth:
            worth[said] = _mark(current.item, answer, verdicts)
        marks[player] = worth[said]
        times[said] += 1
    return RoundMarks(
        item=current.item,
        answers=current.answers,
        rulings=current.rulings,
        verdicts=verdicts,
        marks=marks,
        said=times,
        bench_answers=current.bench_answers,
        bench_marks={
            bench: mark_of(current.item, answer, current.rulings)
            for bench, answer in current.bench_answers.items()
        },
    )


def _is_of(known: RoundMarks, current: Round) -> bool:
    same = known.item is current.item and known.answers is current.answers
    return same and known.rulings is current.rulings and known.bench_answers is current.bench_answers


def _verdicts(current: Round, known: RoundMarks | None) -> dict[str, Verdict]:
    same = known is not None and known.item is current.item and known.rulings is current.rulings
    before = known.verdicts if known is not None and same else {}
    texts = dict.fromkeys(text for answer in current.answers.values() for text in answer.typed)
    return {text: before.get(text) or judge(current.item, text, current.rulings) for text in texts}


def _mark(item: Item, answer: Answer, verdicts: Mapping[str, Verdict]) -> float:
    if answer.typed:
        return mark_of_words(item, {text: verdicts[text] for text in answer.typed})
    return mark_of(item, answer)
