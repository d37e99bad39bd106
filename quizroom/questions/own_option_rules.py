"""What is wrong with the options of a host's own item, or with the spellings of a typed one."""

from collections.abc import Iterator

from quizroom.questions.model import LETTERS
from quizroom.questions.own import OwnItem
from quizroom.questions.own_findings import Finding, error
from quizroom.questions.typed import form_of

LONGEST_OPTION = 120
"""Characters; what a row of the wall holds."""
LONGEST_REASON = 600
MOST_OPTIONS = 5
MOST_SPELLINGS = 20


def typed_errors(own: OwnItem) -> Iterator[Finding]:
    """What keeps a typed item from being asked."""
    if not any(form_of(text) for text in own.accepted):
        text = "Nothing would be right yet. Write the answer, and below it every other spelling that counts."
        yield error("accepted", "key_is_there", text)
    if len(own.accepted) > MOST_SPELLINGS or any(len(text) > LONGEST_OPTION for text in own.accepted):
        text = f"At most {MOST_SPELLINGS} spellings of {LONGEST_OPTION} characters are compared."
        yield error("accepted", "spellings_are_few", f"{text} Keep the likely ones.")
    if not own.why or len(own.why) > LONGEST_REASON:
        text = f"Say in up to {LONGEST_REASON} characters why this is the answer: it is read after the round."
        yield error("why", "key_has_a_reason", text)


def option_errors(own: OwnItem) -> Iterator[Finding]:
    """What keeps an item with options from being asked."""
    most = len(LETTERS) if own.format == "pick_n" else MOST_OPTIONS
    if not 2 <= len(own.options) <= most:
        text = f"Write two to {most} options; three or four are best."
        yield error("options", "options_can_be_counted", text)
    yield from _key_errors(own)
    if len(own.why) > LONGEST_REASON:
        yield error("why", "key_has_a_reason", f"Bring this below {LONGEST_REASON} characters.")
    read: dict[str, int] = {}
    for place, option in enumerate(own.options[: len(LETTERS)]):
        form = option.text.casefold()
        yield from _errors_of_option(place, option.text, option.reason)
        if form and form in read:
            text = f"It reads as option {LETTERS[read[form]]} does. Change one of them."
            yield error(f"options.{place}.text", "options_differ", text)
        read.setdefault(form, place)


def _key_errors(own: OwnItem) -> Iterator[Finding]:
    keys = sum(option.is_key for option in own.options)
    if own.format == "one_best" and keys == 0:
        yield error("key", "key_is_there", "Mark the one option that is the key.")
    if own.format == "one_best" and keys > 1:
        text = "One best answer has one key. Unmark the others, or let players pick several."
        yield error("key", "key_is_there", text)
    if own.format == "pick_n" and not 2 <= keys < len(own.options):
        text = "Mark two or more options as keys, and leave some that are wrong."
        yield error("key", "key_is_there", text)


def _errors_of_option(place: int, text: str, reason: str) -> Iterator[Finding]:
    field = f"options.{place}"
    if not text:
        yield error(f"{field}.text", "options_are_filled", "This option is empty. Write it, or take it out.")
    if len(text) > LONGEST_OPTION:
        told = f"It has {len(text)} characters; a row of the wall holds {LONGEST_OPTION}. Shorten it."
        yield error(f"{field}.text", "options_fit_the_wall", told)
    if not reason:
        told = "Say why it is right or wrong: whoever chose it reads this after the round."
        yield error(f"{field}.reason", "options_have_reasons", told)
    if len(reason) > LONGEST_REASON:
        told = f"Bring this below {LONGEST_REASON} characters."
        yield error(f"{field}.reason", "reasons_are_short", told)
