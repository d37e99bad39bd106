"""What came out of an ordering or a matching, place by place or row by row."""

from collections import Counter

from quizroom.questions.model import Item, Option
from quizroom.room.answers import IN_PLACES
from quizroom.room.state import Answer, Round
from quizroom.views.own_model import ChosenReason
from quizroom.views.result_model import LetterCount, RowResult
from quizroom.views.shares import share


def row_results(item: Item, current: Round | None, *, reasons: bool) -> tuple[RowResult, ...]:
    """Each place or row with its right option and what was put there; empty for other formats."""
    if item.format not in IN_PLACES:
        return ()
    answers = [answer.choice for answer in current.answers.values()] if current else []
    return tuple(
        _row(item, place, Counter(choice[place] for choice in answers), len(answers), reasons=reasons)
        for place in range(len(item.key))
    )


def row_reasons(item: Item, answer: Answer) -> tuple[ChosenReason, ...]:
    """Of one answer each place or row: what was put there, whether it was right, and why not."""
    return tuple(_own_row(item, place, letter) for place, letter in enumerate(answer.choice))


def _row(item: Item, place: int, given: Counter[str], answered: int, *, reasons: bool) -> RowResult:
    letter = item.key[place]
    option = _option(item, letter)
    others = sorted(
        ((other, count) for other, count in given.items() if other not in (letter, "")),
        key=lambda pair: (-pair[1], pair[0]),
    )
    return RowResult(
        stem=item.stems[place].text if item.stems else "",
        letter=letter,
        text=option.text,
        count=given[letter],
        share=share(given[letter], answered),
        letters=tuple(LetterCount(letter=other, count=count) for other, count in others),
        reason=_why(item, place) if reasons else None,
    )


def _own_row(item: Item, place: int, letter: str) -> ChosenReason:
    head = item.stems[place].text if item.stems else f"{place + 1}"
    said = f"{letter}: {_option(item, letter).text}" if letter else "no answer"
    why = _why(item, place)
    right = letter == item.key[place]
    if letter and not right and item.stems:
        why = f"{why} {_option(item, letter).reason.text}"
    return ChosenReason(text=f"{head} – {said}", right=right, reason=why)


def _why(item: Item, place: int) -> str:
    """Why the right one belongs here."""
    if item.stems:
        return item.stems[place].reason.text
    return _option(item, item.key[place]).reason.text


def _option(item: Item, letter: str) -> Option:
    return next(option for option in item.options if option.letter == letter)
