"""How far words are apart. Check values: the trade's own table (computed, no source)."""

import pytest

from quizroom.questions.typed import letters_apart, spelling_distance


def test_words_are_compared_each_in_its_own_slot() -> None:
    assert spelling_distance("flexor carpi radialus", "flexor carpi radialis") == 1
    assert spelling_distance("carpi flexor radialis", "flexor carpi radialis") == 12
    assert spelling_distance("teres mayor", "teres major") is None
    assert spelling_distance("bicepsbrachii", "biceps brachii") == 1


@pytest.mark.parametrize(
    "one,other,distance",
    [
        ("abductor", "adductor", 1),
        ("ilium", "ileum", 1),
        ("peroneal", "perineal", 1),
        ("ulna", "ulnar", 1),
        ("trapezius", "trapezium", 1),
        ("coracoid", "coronoid", 2),
        ("malleus", "malleolus", 2),
        ("biceps brachii", "triceps brachii", 2),
        ("lattisimus", "latissimus", 2),
        ("infraspinous", "infraspinatus", 2),
    ],
)
def test_distances_are_those_of_the_trade(one: str, other: str, distance: int) -> None:
    assert letters_apart(one, other) == distance
