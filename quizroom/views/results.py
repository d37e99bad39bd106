"""What came out of a closed round, as numbers and as words."""

from collections import Counter

from quizroom.knowledge.terms import normalise
from quizroom.marking import RoundMarks
from quizroom.questions.model import Item, Option
from quizroom.questions.typed import VerdictKind
from quizroom.room.answers import IN_PLACES
from quizroom.room.state import Round
from quizroom.views.changes import rekeyed_note
from quizroom.views.desk_model import DeskOption, DeskTyped
from quizroom.views.result_model import OptionResult, ResultFace, TypedResult
from quizroom.views.rows import row_results
from quizroom.views.shares import share

UNSPELLED = "other words"
"""Stands in public for typed words that are no term of anatomy: they might be rude, or a name."""

VERDICT_ORDER: dict[VerdictKind, int] = {"right": 0, "half": 1, "doubtful": 2, "wrong": 3}


def result_face(current: Round, marks: RoundMarks, *, of: int) -> ResultFace:
    """The outcome for everybody; reasons only once the record is shown."""
    explained = current.explained_at is not None
    answered = len(current.answers)
    return ResultFace(
        options=() if current.item.format in IN_PLACES else option_results(current, marks, reasons=explained),
        rows=row_results(current.item, current, reasons=explained),
        typed=typed_results(current, marks),
        key_text=key_text(current.item),
        why=current.item.why.text if explained else None,
        answered=answered,
        of=of,
        mean_mark=mean_mark(marks),
        struck=current.struck,
        by_host=current.item.by_host,
        rekeyed=rekeyed_note(current),
    )


def option_results(current: Round, marks: RoundMarks, *, reasons: bool) -> tuple[OptionResult, ...]:
    """How often each option was chosen."""
    chosen = _times_chosen(marks)
    return tuple(
        OptionResult(
            letter=option.letter,
            text=option.text,
            is_key=option.letter in current.item.key,
            count=chosen[option.letter],
            share=share(chosen[option.letter], len(current.answers)),
            reason=option.reason.text if reasons else None,
        )
        for option in current.item.options
    )


def desk_options(item: Item, marks: RoundMarks | None) -> tuple[DeskOption, ...]:
    """Options with key, reason and source, for the host alone; with `marks` how often each was chosen."""
    chosen = _times_chosen(marks) if marks is not None else Counter[str]()
    answered = len(marks.answers) if marks is not None else 0
    return tuple(_desk_option(item, option, chosen[option.letter], answered) for option in item.options)


def desk_typed(current: Round, marks: RoundMarks) -> tuple[DeskTyped, ...]:
    """Typed answers as written, most frequent first, with the verdict and why."""
    written: Counter[str] = Counter()
    for (_, typed), times in marks.said.items():
        for text in typed:
            written[text.casefold()] += times
    verdicts = {text.casefold(): found for text, found in marks.verdicts.items()}
    return tuple(
        DeskTyped(
            text=text,
            verdict=verdicts[text].kind,
            because=verdicts[text].because,
            count=count,
            ruled=current.rulings.get(normalise(text)),
        )
        for text, count in sorted(written.items(), key=lambda pair: (-pair[1], pair[0]))
    )


def key_text(item: Item) -> tuple[str, ...]:
    """The key in words: the texts of its options, or the terms looked for."""
    if item.format in IN_PLACES:
        rows = row_results(item, None, reasons=False)
        return tuple(f"{row.stem}: {row.text}" if row.stem else row.text for row in rows)
    if item.key:
        return tuple(option.text for option in item.options if option.letter in item.key)
    return tuple(accepted.text for accepted in item.accepted)


def mean_mark(marks: RoundMarks) -> float | None:
    """Mean mark of those who answered, or None if nobody did."""
    return round(sum(marks.marks.values()) / len(marks.marks), 4) if marks.marks else None


def _desk_option(item: Item, option: Option, count: int, answered: int) -> DeskOption:
    return DeskOption(
        letter=option.letter,
        text=option.text,
        is_key=option.letter in item.key,
        reason=option.reason.text,
        source=option.source,
        count=count,
        share=share(count, answered),
    )


def _times_chosen(marks: RoundMarks) -> Counter[str]:
    chosen: Counter[str] = Counter()
    for (choice, _), times in marks.said.items():
        for letter in choice:
            chosen[letter] += times
    return chosen


def typed_results(current: Round, marks: RoundMarks) -> tuple[TypedResult, ...]:
    """Typed answers by what they came to; only terms known to anatomy are spelled out.

    People are counted, not words: in a list several words of one player may come to the same row.
    """
    said: Counter[tuple[str, VerdictKind]] = Counter()
    for (_, typed), players in marks.said.items():
        found = (marks.verdicts[text] for text in typed)
        for row in {(_public_text(current.item, one.concept), one.kind) for one in found}:
            said[row] += players
    rows = sorted(said.items(), key=lambda pair: (VERDICT_ORDER[pair[0][1]], -pair[1], pair[0][0]))
    return tuple(
        TypedResult(text=text, verdict=kind, count=count, share=share(count, len(current.answers)))
        for (text, kind), count in rows
    )


def _public_text(item: Item, concept: str) -> str:
    known = {accepted.concept: accepted.text for accepted in item.accepted}
    known |= {near.concept: near.term for near in reversed(item.near) if near.concept not in known}
    return known.get(concept, UNSPELLED)
