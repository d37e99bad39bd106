"""Stems, options and reasons of every item, as the trade's rules of item writing want them."""

import re

from quizroom.questions.model import Item
from tests.questions.lists import all_items

ODD = re.compile(r"  |\(\)|_|\bthe the\b|\bof of\b|\s[.,;?]|;;|\.\.|\bNone\b|\b(a|an)\s(the|of)\b")
PLURAL_HEAD = re.compile(
    r"^The (?!prime)[a-z ]*(branches|arteries|joints|heads) (of [^,;:.]* )?(is|supplies|lies) "
)


def texts(item: Item) -> list[str]:
    """Every sentence that an item may show."""
    return [item.stem, item.why.text, *(option.reason.text for option in item.options)]


def is_named(option: str, reason: str) -> bool:
    """Whether a reason has the words of an option; the direction of a movement may stand behind its place."""
    pieces = re.fullmatch(r"(.+?)(?: ((?:to the|from) .+))?", option.casefold())
    said = reason.casefold()
    return option.casefold() in said or bool(pieces and all(one in said for one in pieces.groups("")))


def test_every_option_has_a_reason_of_its_own_in_a_sentence() -> None:
    for item in all_items():
        for option in item.options:
            assert option.reason.text[0].isupper(), option
            assert option.reason.text.endswith("."), option
        assert item.why.text.endswith(".")


def test_a_reason_names_the_thing_that_was_chosen_or_what_was_asked_about() -> None:
    for item in all_items():
        for option in item.options:
            assert is_named(option.text, option.reason.text) or (
                option.letter in item.key and item.direction.startswith("muscle_to_")
            ), (
                item.stem,
                option,
            )


def test_reasons_rest_on_sources_unless_nothing_is_recorded() -> None:
    for item in all_items():
        assert item.why.sources, item.stem
        for option in item.options if item.direction != "meaning_to_movement" else ():
            bare = re.search(
                r"no muscle|no whole muscle|not recorded|only smaller places",
                option.reason.text,
                re.IGNORECASE,
            )
            assert option.reason.sources or bare, option


def test_sentences_are_clean() -> None:
    for item in all_items():
        for text in texts(item):
            assert not ODD.search(text), text
            assert not PLURAL_HEAD.search(text), text
