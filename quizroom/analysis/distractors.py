"""What each option of an item did: how many chose it, and whether that was the weaker part of the class."""

from collections.abc import Mapping
from dataclasses import dataclass

from quizroom.analysis.responses import Column
from quizroom.analysis.upper_lower import difference, groups_of
from quizroom.questions.model import Option

LEAST_SHARE = 0.05
"""Fewer do not make a functioning distractor (Tarrant, Ware & Mohammed 2009, BMC Med Educ 9:40)."""
FEWEST_FOR_VERDICTS = 20
"""With fewer people one of them is 5 % or more, and one person more or less moves D by a band."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OptionCount:
    """One option: how many chose it, and how much more of the upper group did so than of the lower."""

    option: Option
    is_key: bool
    people: int
    share: float
    difference: float | None
    functions: bool | None
    """Of a distractor: chosen by 5 % or more, and not more by the upper group. None with too few people."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Distractors:
    """All options of an item in order; `efficiency` is functioning / all distractors, 0 to 1."""

    options: tuple[OptionCount, ...]
    functioning: int | None
    distractors: int
    efficiency: float | None


def distractors_of(column: Column, ranked: Mapping[str, float]) -> Distractors | None:
    """The options of an item that is answered by letters; None for other formats, and if nobody answered."""
    item = column.current.item
    if item.format not in ("one_best", "pick_n") or not column.marks:
        return None
    options = tuple(_count(column, option, ranked) for option in item.options)
    wrong = [one for one in options if not one.is_key]
    working = sum(bool(one.functions) for one in wrong)
    enough = bool(wrong) and len(column.marks) >= FEWEST_FOR_VERDICTS
    return Distractors(
        options=options,
        functioning=working if enough else None,
        distractors=len(wrong),
        efficiency=working / len(wrong) if enough else None,
    )


def _count(column: Column, option: Option, ranked: Mapping[str, float]) -> OptionCount:
    answers, item = column.current.answers, column.current.item
    chosen = {player: float(option.letter in answers[player].choice) for player in column.marks}
    groups = groups_of({player: ranked[player] for player in chosen if player in ranked})
    apart = difference(chosen, groups)
    share = sum(chosen.values()) / len(chosen)
    judged = option.letter not in item.key and len(chosen) >= FEWEST_FOR_VERDICTS and apart is not None
    return OptionCount(
        option=option,
        is_key=option.letter in item.key,
        people=round(sum(chosen.values())),
        share=share,
        difference=apart,
        functions=share >= LEAST_SHARE and round(apart or 0.0, 9) <= 0 if judged else None,
    )
