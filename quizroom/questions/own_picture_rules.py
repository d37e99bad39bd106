"""What a picture of a host's own item must come with: its twin in words, and whose it is."""

from collections.abc import Iterator

from quizroom.questions.model import Picture
from quizroom.questions.own_findings import Finding, error
from quizroom.questions.typed import form_of

LONGEST_ALT = 600
LONGEST_CREDIT = 200


def picture_errors(picture: Picture | None) -> Iterator[Finding]:
    """What keeps a picture from being shown; nothing without a picture."""
    if picture is None:
        return
    if not picture.alt:
        text = "Say in words what is to be seen: whoever does not see the picture answers by that."
        yield error("picture.alt", "picture_has_words", text)
    if len(picture.alt) > LONGEST_ALT:
        text = f"Bring the description below {LONGEST_ALT} characters."
        yield error("picture.alt", "picture_has_words", text)
    if not 0 < len(picture.credit) <= LONGEST_CREDIT:
        text = "Say who made the picture and by which licence it may be shown, for example: own drawing."
        yield error("picture.credit", "picture_says_whose_it_is", text)


def picture_tells_the_key(picture: Picture | None, keys: tuple[str, ...]) -> bool:
    """Whether the description holds a key word for word."""
    words = "" if picture is None else f" {form_of(picture.alt)} "
    return any(f" {form_of(key)} " in words for key in keys if form_of(key))
