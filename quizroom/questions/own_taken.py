"""Items that a host wrote, as they were dealt, turned back into items of a library."""

from dataclasses import replace

from quizroom.questions.model import Item
from quizroom.questions.own import OwnItem, OwnOption
from quizroom.questions.own_dealt import reasons_of_keys
from quizroom.questions.timing import seconds_for


def own_of(item: Item) -> OwnItem | None:
    """What the host wrote; None for what was dealt from the content.

    What a deal does not keep is left as for a new item: whether the options stay in their order, and which
    warnings were let stand.
    """
    if not item.by_host or item.format not in ("one_best", "pick_n", "typed"):
        return None
    own = OwnItem(
        format=item.format,
        stem=item.stem,
        options=tuple(
            OwnOption(text=one.text, reason=one.reason.text, is_key=one.letter in item.key)
            for one in item.options
        ),
        accepted=tuple(term for one in item.accepted for term in one.terms),
        spelling=item.spelling,
        why=item.why.text,
        family=item.family,
        muscles=item.muscles,
        picture=item.picture,
        seconds=item.seconds,
    )
    return _without_what_is_computed(own, item)


def is_same(one: OwnItem, other: OwnItem) -> bool:
    """Whether two items ask the same with the same answers: order, case, reasons and pictures may differ."""
    return _asked(one) == _asked(other)


def _asked(own: OwnItem) -> tuple[object, ...]:
    typed = own.format == "typed"
    answers = own.accepted if typed else ()
    options = () if typed else own.options
    return (
        own.format,
        own.stem.casefold(),
        frozenset((one.text.casefold(), one.is_key) for one in options),
        frozenset(one.casefold() for one in answers),
    )


def _without_what_is_computed(own: OwnItem, item: Item) -> OwnItem:
    """The item without a reason and a length that a deal would make again by itself."""
    length = seconds_for(item.stem, [one.text for one in item.options], item.format, item.pick)
    return replace(
        own,
        why="" if own.why == reasons_of_keys(own) else own.why,
        seconds=None if own.seconds == length else own.seconds,
    )
