"""Whether items of a file can be asked and answered: what their parts say of each other must agree."""

from collections.abc import Iterator, Sequence

from quizroom.exchange.review_file.faults import Fault
from quizroom.questions.model import LETTERS, Item

SHORTEST, LONGEST = 5, 3600
"""Seconds of a round."""


def faults_of_items(items: Sequence[Item], at: str = "items") -> Iterator[Fault]:
    """What is wrong with each item, and ids that stand twice."""
    seen: set[str] = set()
    for place, item in enumerate(items):
        path = f"{at}.{place}"
        if not item.id or len(item.id) > len(LETTERS) * 20 or item.id in seen:
            yield Fault(path=f"{path}.id", text="Each item has an id of its own, of 1 to 200 characters.")
        seen.add(item.id)
        yield from faults_of_item(item, path)


def faults_of_item(item: Item, path: str) -> Iterator[Fault]:
    """What is wrong with one item."""
    if not item.stem.strip():
        yield Fault(path=f"{path}.stem", text="The stem is empty.")
    if not SHORTEST <= item.seconds <= LONGEST:
        yield Fault(path=f"{path}.seconds", text=f"A round lasts {SHORTEST} to {LONGEST} seconds.")
    if item.difficulty is not None and not 0 <= item.difficulty <= 1:
        yield Fault(path=f"{path}.difficulty", text="It lies between 0 and 1.")
    if item.observed is not None and not 0 <= item.observed.right <= item.observed.answered:
        yield Fault(path=f"{path}.observed", text="No more can be right than have answered.")
    if "".join(option.letter for option in item.options) != LETTERS[: len(item.options)]:
        yield Fault(path=f"{path}.options", text="Options are lettered A, B, C ... in their order, up to J.")
    elif not _key_fits(item):
        text = "Key, options, rows and number of answers do not fit each other in this format."
        yield Fault(path=f"{path}.key", text=text)
    picture = item.picture
    if picture is not None and not (picture.alt and picture.width > 0 and picture.height > 0):
        text = "A picture has its size, and words that say what is to be seen."
        yield Fault(path=f"{path}.picture", text=text)


def _key_fits(item: Item) -> bool:
    letters = {option.letter for option in item.options}
    key, known = item.key, set(item.key) <= letters
    match item.format:
        case "one_best" | "pick_n":  # a host may have keyed more than are asked for
            enough = 1 <= item.pick <= len(key) == len(set(key)) and len(letters) >= 2
            return enough and known and (item.pick == 1 or item.format == "pick_n")
        case "ordering":
            return len(letters) >= 2 and set(key) == letters and len(key) == item.pick == len(letters)
        case "matching":
            return bool(letters) and 1 <= len(key) == item.pick == len(item.stems) and known
        case "typed" | "free_list":
            return not letters and not key and 1 <= item.pick <= len(item.accepted) and _terms_are_there(item)


def _terms_are_there(item: Item) -> bool:
    return all(one.text.strip() and any(term.strip() for term in one.terms) for one in item.accepted)
