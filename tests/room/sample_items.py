"""Items made by hand, for tests that need no knowledge base."""

from collections.abc import Iterable
from dataclasses import replace

from quizroom.questions.model import Accepted, DistractorSource, Item, NearTerm, Option, Reason, Stem
from tests.room.sample_record import record

NERVES = ("radial nerve", "axillary nerve", "median nerve", "ulnar nerve")


ARTERIES = ("brachial artery", "axillary artery", "subclavian artery", "radial artery")
MUSCLES = ("biceps brachii", "triceps brachii", "brachialis", "deltoid", "coracobrachialis")


def reason(text: str) -> Reason:
    """A reason with a fact and a source of its own."""
    return Reason(text=f"Because: {text}.", facts=(f"fact of {text}",), sources=("common practice",))


def options(texts: Iterable[str], key: str) -> tuple[Option, ...]:
    """Lettered options; those whose letter is in `key` are right."""
    return tuple(
        Option(letter=letter, text=text, concept=text, reason=reason(text), source=_source(letter, key))
        for letter, text in zip("ABCDEFGHIJ", texts, strict=False)
    )


def one_best(item: str = "one-best", key: str = "B") -> Item:
    """Which nerve supplies the deltoid? The key may be moved, right or wrong."""
    return Item(
        id=item,
        family="nerve",
        direction="muscle to nerve",
        format="one_best",
        subject="deltoid",
        stem="Which nerve supplies the deltoid?",
        options=options(NERVES, key),
        key=(key,),
        pick=1,
        accepted=(),
        near=(),
        spelling="half",
        why=reason(f"the key is {key}"),
        facts=("deltoid nerve",),
        muscles=("deltoid",),
        records=(record("Deltoid", nerve="axillary nerve"),),
        seconds=30,
    )


def pick_three(item: str = "pick-three", key: str = "ACE") -> Item:
    """The three muscles of the musculocutaneous nerve, among five."""
    return replace(
        one_best(item),
        family="set",
        format="pick_n",
        stem="Which three muscles does the musculocutaneous nerve supply?",
        options=options(MUSCLES, key),
        key=tuple(key),
        pick=len(key),
        why=reason(f"the keys are {key}"),
    )


def typed(item: str = "typed") -> Item:
    """The nerve of the deltoid, in the player's own words."""
    return replace(
        one_best(item),
        format="typed",
        options=(),
        key=(),
        accepted=(accepted("axillary nerve", "circumflex nerve"),),
        near=tuple(
            NearTerm(concept=nerve, term=nerve, tells=f"The {nerve} is another.")
            for nerve in ("radial nerve", "musculocutaneous nerve")
        ),
    )


def free_list(item: str = "free-list") -> Item:
    """The three muscles of the musculocutaneous nerve, typed."""
    return replace(
        typed(item),
        family="set",
        format="free_list",
        stem="Name the three muscles that the musculocutaneous nerve supplies.",
        pick=3,
        accepted=(
            accepted("biceps brachii", "biceps of the arm"),
            accepted("brachialis", "brachialis anticus"),
            accepted("coracobrachialis"),
        ),
        near=(NearTerm(concept="triceps brachii", term="triceps brachii", tells="It extends the elbow."),),
    )


def ordering(item: str = "ordering", key: str = "CADB") -> Item:
    """Four arteries of the arm, to be put in order."""
    return replace(
        one_best(item),
        family="ordering",
        format="ordering",
        stem="In which order does blood on its way to the forearm pass these?",
        options=options(ARTERIES, key),
        key=tuple(key),
        pick=len(key),
        why=reason(f"the order is {key}"),
    )


def matching(item: str = "matching", key: str = "DAB") -> Item:
    """Three muscles, and four nerves of which each has one."""
    return replace(
        one_best(item),
        family="matching",
        format="matching",
        stem="Which nerve supplies each of these muscles?",
        options=options(NERVES, key),
        key=tuple(key),
        pick=len(key),
        stems=tuple(
            Stem(text=muscle, concept=muscle, reason=reason(f"{muscle} has {letter}"))
            for muscle, letter in zip(MUSCLES, key, strict=False)
        ),
        why=reason(f"the keys are {key}"),
    )


def accepted(text: str, *synonyms: str) -> Accepted:
    """A concept that counts, by this term or a synonym."""
    return Accepted(concept=text, text=text, terms=(text, *synonyms))


def all_formats() -> tuple[Item, ...]:
    """One item of each format."""
    return one_best(), pick_three(), typed(), free_list(), ordering(), matching()


def _source(letter: str, key: str) -> DistractorSource:
    return "key" if letter in key else "look_alike"
