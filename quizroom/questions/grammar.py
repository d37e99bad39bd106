"""The little grammar of stems and reasons: verbs that agree, articles, lists, numbers.

Sentences are built so that the number of a name hardly matters; where a verb must agree, `agreeing` does it.
"""

from quizroom.knowledge.wording import listed

LONGEST_LIST = 4
"""Things that a sentence names one by one."""
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_PLURAL_NAMES = frozenset(
    (
        *("fibers", "fibres", "slips", "heads", "parts", "bellies", "halves", "lumbricals", "interossei"),
        *("branches", "arteries", "nerves", "joints", "ribs", "cartilages", "intercostals", "subcostales"),
        *("interspinales", "intertransversarii", "rotatores", "multifidi", "obliques", "gemelli"),
        *("muscles", "constrictors", "rami"),
    )
)
_PLURAL_STARTS = ("levatores ", "rotatores ", "interspinales ", "intertransversarii ", "lumbricals ")
_BARE_STARTS = ("ribs ", "costal cartilages ")


def agreeing_with_all(texts: list[str], one: str, many: str) -> str:
    """`many` for several subjects or one that is plural itself, else `one`."""
    return many if len(texts) > 1 else agreeing(texts[0], one, many)


def agreeing(text: str, one: str, many: str) -> str:
    """`many` if `text` names several things ("upper fibers of ..."), else `one`."""
    head = head_of(text).split(" (", maxsplit=1)[0]
    return many if head.rpartition(" ")[2] in _PLURAL_NAMES or head.startswith(_PLURAL_STARTS) else one


def head_of(text: str) -> str:
    """A name without what it is of: "long head" for "long head of biceps brachii"."""
    return text.split(" of ", maxsplit=1)[0]


def definite(text: str) -> str:
    """With the article, unless numbers take its place: "the clavicle", "ribs 3–5", "C1"."""
    return text if text.startswith(_BARE_STARTS) or text[1:2].isdigit() else f"the {text}"


def capitalised(text: str) -> str:
    """With its first letter large, the rest as it is."""
    return text[:1].upper() + text[1:]


def uncapitalised(text: str) -> str:
    """With its first letter small, unless it is a sign such as C5."""
    return text if text[1:2].isdigit() else text[:1].lower() + text[1:]


def listed_clearly(texts: list[str]) -> str:
    """A list in a sentence, with semicolons where its members have commas or lists of their own."""
    if len(texts) < 2 or not any("," in text or " and " in text for text in texts):
        return listed(texts)
    mark = ";" if len(texts) > 2 or any("," in text for text in texts) else ","
    return f"{f'{mark} '.join(texts[:-1])}{mark} and {texts[-1]}"


def number_word(number: int) -> str:
    """0 to 10 in words; figures beyond."""
    return _NUMBERS[number] if number < len(_NUMBERS) else str(number)


def shortened(texts: list[str], longest: int = LONGEST_LIST) -> list[str]:
    """At most `longest` texts; what is left out is named "others"."""
    return texts if len(texts) <= longest else [*texts[:longest], "others"]
