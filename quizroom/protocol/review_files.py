"""What the desk is told of the file of a review before and after it is taken."""

from dataclasses import dataclass

from quizroom.questions.model import Format


@dataclass(frozen=True, slots=True, kw_only=True)
class FiledItem:
    """An item in a file, as its preview lists it."""

    stem: str
    format: Format
    by_host: bool
    has_picture: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewFilePreview:
    """What a file holds, and what would become of it; `played` says that it holds what happened too."""

    title: str
    course: str
    played: bool
    items: tuple[FiledItem, ...]
    players: int
    answers: int
    ended_at: int | None
    remarks: tuple[str, ...]
    """What the host should know before taking it."""
    own_items: int = 0
    """Items written by a host that whoever takes the file does not have in the library yet."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FileFault:
    """One thing that is wrong with a file: where in it, and what."""

    path: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewFileRefused:
    """Why a file was not taken; nothing of it was."""

    problem: str
    faults: tuple[FileFault, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewTaken:
    """The review that a file has become."""

    room: str
