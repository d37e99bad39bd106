"""An item of a host's own: as it is written and kept in the library, before it is dealt."""

import unicodedata
from dataclasses import dataclass, replace
from typing import Literal

from quizroom.questions.model import Family, Picture, Spelling

OwnFormat = Literal["one_best", "pick_n", "typed"]

_OVERRIDES = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
"""Controls that turn the direction of what follows, and could scramble a whole line of the wall."""


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnOption:
    """An option, and why it is right or wrong."""

    text: str = ""
    reason: str = ""
    is_key: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnItem:
    """What a host wrote, finished or not. Fields that the format does not use are kept, but not dealt."""

    format: OwnFormat = "one_best"
    stem: str = ""
    options: tuple[OwnOption, ...] = ()
    accepted: tuple[str, ...] = ()
    """Of a typed item every spelling that is right; the first is shown as the key."""
    spelling: Spelling = "accept"
    why: str = ""
    """Why the key is the key; where it is empty, the reasons of the keys stand for it."""
    family: Family = "own"
    region: str = ""
    """For the library alone, and where no muscle tells the region."""
    muscles: tuple[str, ...] = ()
    """Ids of the muscles whose records are shown afterwards."""
    picture: Picture | None = None
    seconds: int | None = None
    """Length of the round; None to have it computed."""
    keeps_order: bool = False
    """Whether the options stay in this order, as segments and ranks do; else they are shuffled."""
    taken: tuple[str, ...] = ()
    """Rules whose warnings the host has read and lets stand."""


def tidied(own: OwnItem) -> OwnItem:
    """The item with single spaces and without what cannot be seen; spellings that are empty go."""
    return replace(
        own,
        stem=tidy_text(own.stem),
        options=tuple(
            replace(one, text=tidy_text(one.text), reason=tidy_text(one.reason)) for one in own.options
        ),
        accepted=tuple(dict.fromkeys(filter(None, map(tidy_text, own.accepted)))),
        why=tidy_text(own.why),
        muscles=tuple(dict.fromkeys(own.muscles)),
        picture=None if own.picture is None else _tidied_picture(own.picture),
        taken=tuple(dict.fromkeys(own.taken)),
    )


def tidy_text(raw: str) -> str:
    """NFC, single spaces, no controls and no turns of direction."""
    seen = (one for one in raw if one.isspace() or (one not in _OVERRIDES and _is_no_control(one)))
    return " ".join(unicodedata.normalize("NFC", "".join(seen)).split())


def _tidied_picture(picture: Picture) -> Picture:
    return replace(picture, alt=tidy_text(picture.alt), credit=tidy_text(picture.credit))


def _is_no_control(character: str) -> bool:
    return unicodedata.category(character) not in ("Cc", "Cs", "Co")
