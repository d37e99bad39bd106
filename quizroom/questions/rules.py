"""The trade's rules of item writing as checks over single items.

Sources: Haladyna, Downing and Rodriguez 2002, Applied Measurement in Education 15:309-334; NBME Item-Writing
Guide 2020 (both from memory). Each rule is a function that says what is wrong, or nothing.
"""

import re
from collections.abc import Callable, Iterator

from quizroom.questions.cues import clangs, stands_out_in_length, stems_of
from quizroom.questions.formats import LONGEST_STEM_WORDS
from quizroom.questions.model import TYPED_FORMATS, Item

Rule = Callable[[Item], str]

_NEGATIVE = re.compile(r"\b(not|except|never|false|incorrect|least likely)\b", re.IGNORECASE)
_SWEEPING = re.compile(r"\b(all|none|both|neither) of (the above|these)\b|^(all|none)$", re.IGNORECASE)
_ARTICLE_AT_END = re.compile(r"\b(a|an)\s*[?:.]$", re.IGNORECASE)


def stem_is_one_question(item: Item) -> str:
    """A stem asks, or says what to name; it can be answered with the options covered."""
    asks = item.stem.endswith("?") and item.stem.count("?") == 1
    names = item.format in TYPED_FORMATS and item.stem.startswith("Name ") and item.stem.endswith(".")
    return "" if asks or names else "the stem is no question"


def stem_is_short(item: Item) -> str:
    """At most 25 words for what is recalled."""
    words = len(item.stem.split())
    return "" if words <= LONGEST_STEM_WORDS else f"the stem has {words} words"


def stem_is_positive(item: Item) -> str:
    """No EXCEPT and no NOT: readers overlook them."""
    found = _NEGATIVE.search(item.stem)
    return f'the stem says "{found[0]}"' if found else ""


def articles_are_neutral(item: Item) -> str:
    """No "a" or "an" before the options, which would tell how the key begins."""
    return "the stem ends in an article" if _ARTICLE_AT_END.search(item.stem) else ""


def options_are_homogeneous(item: Item) -> str:
    """All whole muscles or all heads, all movements with their joint or all places: one sort of thing."""
    sorts = {_sort(option.concept) for option in item.options}
    if item.format == "ordering":  # what lies along a limb is of several sorts: places and joints
        return ""
    return "" if len(sorts) <= 1 else f"the options are of {len(sorts)} sorts"


def options_differ(item: Item) -> str:
    """No two options read alike."""
    texts = {option.text.casefold() for option in item.options}
    return "" if len(texts) == len(item.options) else "two options read alike"


def options_claim_no_others(item: Item) -> str:
    """No "all of the above", no "none of these"."""
    found = [option.letter for option in item.options if _SWEEPING.search(option.text)]
    return f"option {found[0]} speaks of the others" if found else ""


def options_are_enough(item: Item) -> str:
    """Two to four wrong ones, three or four beside a set; where all are to be put in order, none is wrong."""
    if item.format in (*TYPED_FORMATS, "ordering"):
        return ""
    wrong = len(item.options) - len(item.key)
    fewest, most = (3, 4) if item.format == "pick_n" else (2, 4)
    return "" if fewest <= wrong <= most else f"{wrong} wrong options"


def key_is_not_the_longest(item: Item) -> str:
    """The key is not longer than every other option, nor by more than a quarter longer than their mean.

    That it is not much shorter is wished for when options are chosen, but no rule: where all other joints
    have long names, the elbow joint is asked for all the same.
    """
    if len(item.key) != 1:
        return ""
    key = next(option.text for option in item.options if option.letter in item.key)
    others = [option.text for option in item.options if option.letter not in item.key]
    return "the key stands out by its length" if stands_out_in_length(key, others) else ""


def key_does_not_echo_the_stem_alone(item: Item) -> str:
    """If most keys share a telling stem of a word with the question, a wrong option does so too."""
    stem = stems_of(item.stem)
    echoes = {option.letter for option in item.options if clangs(stem, stems_of(option.text))}
    keys = echoes & set(item.key)
    has_wrong = len(item.options) > len(item.key)
    alone = has_wrong and 2 * len(keys) > len(item.key) and not echoes - keys
    return "only the key echoes the question" if alone else ""


ITEM_RULES: tuple[Rule, ...] = (
    stem_is_one_question,
    stem_is_short,
    stem_is_positive,
    articles_are_neutral,
    options_are_homogeneous,
    options_differ,
    options_claim_no_others,
    options_are_enough,
    key_is_not_the_longest,
    key_does_not_echo_the_stem_alone,
)
"""All rules for single items."""


def breaches(item: Item) -> Iterator[tuple[str, str]]:
    """Name of each rule that an item breaks, with what is wrong."""
    for rule in ITEM_RULES:
        wrong = rule(item)
        if wrong:
            yield rule.__name__, wrong


def _sort(concept: str) -> tuple[bool, bool]:
    """Heads are `muscle/part`; places and movements hold a dot."""
    return "/" in concept, "." in concept
