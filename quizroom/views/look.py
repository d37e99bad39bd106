"""A look as its player sees it: the item, what was answered in the review, and how it is solved."""

from collections.abc import Mapping
from dataclasses import replace

from quizroom.marking import judge
from quizroom.questions.model import Family, Item
from quizroom.questions.typed import Verdict
from quizroom.room.answers import IN_PLACES
from quizroom.room.state import Answer
from quizroom.second_look.asked import AskedLook, Missed
from quizroom.views.item_face import item_face
from quizroom.views.look_model import (
    Look,
    LookFlag,
    MissedFace,
    Solution,
    SolvedOption,
    SolvedRow,
    SolvedTerm,
)
from quizroom.views.moment import milliseconds
from quizroom.views.own import chosen_reasons
from quizroom.views.public import CAUTIONS
from quizroom.views.results import key_text
from quizroom.views.rows import row_results

OF_LESIONS = "Deficits are textbook expectations for a complete lesion; patients vary."
_FAMILY_WORDS: dict[Family, str] = {"look_alike": "Look-alikes", "set": "Sets", "two_step": "Two steps"}
BY_HOST = "Written by your host"
SAID_NOTHING = "no answer"


def look_face(look: AskedLook, subject: str, flag: LookFlag | None = None) -> Look:
    """The look; `subject` names what its stem asks about, in words."""
    return Look(
        id=look.id,
        set=look.set,
        face=item_face(look.item, look.place),
        seconds=look.item.seconds,
        region=look.item.records[0].region if look.item.records else "",
        label=_label(look.item, subject),
        missed=None if look.missed is None else _missed_face(look.missed),
        solution=solution_of(look.item, None if look.missed is None else look.missed.contrast),
        flag=flag,
    )


def solution_of(item: Item, contrast: str | None) -> Solution:
    """The key, the reasons and the records of an item that may be told."""
    in_places = item.format in IN_PLACES
    return Solution(
        key=item.key,
        options=() if in_places else _solved_options(item),
        rows=tuple(
            SolvedRow(stem=row.stem, letter=row.letter, text=row.text, reason=row.reason or "")
            for row in row_results(item, None, reasons=True)
        ),
        accepted=tuple(SolvedTerm(text=one.text, terms=one.terms) for one in item.accepted),
        key_text=key_text(item),
        why=item.why.text,
        contrast=contrast,
        records=item.records,
        cautions=(*CAUTIONS, OF_LESIONS) if item.family == "lesion" else CAUTIONS,
    )


def verdicts_of(item: Item, answer: Answer, rulings: Mapping[str, bool] | None = None) -> dict[str, Verdict]:
    """The verdict on each text that was typed, as it was typed."""
    return {text: judge(item, text, rulings or {}) for text in answer.typed}


def said_text(item: Item, answer: Answer) -> str:
    """What an answer said, in words."""
    if item.format in IN_PLACES:
        texts = {option.letter: option.text for option in item.options}
        places = [texts.get(letter, SAID_NOTHING) for letter in answer.choice]
        heads = [f"{stem.text}: " for stem in item.stems] or [
            f"{place + 1}. " for place in range(len(places))
        ]
        return "; ".join(head + text for head, text in zip(heads, places, strict=True))
    chosen = [option.text for option in item.options if option.letter in answer.choice]
    return "; ".join((*chosen, *answer.typed))


def contrast_of(item: Item, answer: Answer, verdicts: Mapping[str, Verdict]) -> str | None:
    """What is true of that which was wrongly chosen; None for words that name nothing known."""
    known = {text: found for text, found in verdicts.items() if found.concept}
    said = replace(answer, typed=tuple(text for text in answer.typed if text in known))
    reasons = [one.reason for one in chosen_reasons(item, said, known) if not one.right]
    return " ".join(dict.fromkeys(reasons)) or None


def _label(item: Item, subject: str) -> str:
    return BY_HOST if item.by_host else ": ".join(filter(None, (family_words(item.family), subject)))


def family_words(family: Family) -> str:
    """The name of a family as a page shows it."""
    words = _FAMILY_WORDS.get(family, family.replace("_", " "))
    return words[:1].upper() + words[1:]


def _solved_options(item: Item) -> tuple[SolvedOption, ...]:
    return tuple(
        SolvedOption(
            letter=option.letter,
            text=option.text,
            is_key=option.letter in item.key,
            reason=option.reason.text,
        )
        for option in item.options
    )


def _missed_face(missed: Missed) -> MissedFace:
    return MissedFace(
        title=missed.title,
        at=milliseconds(missed.at),
        stem=missed.stem,
        chosen=missed.chosen,
        key_text=missed.key_text,
    )
