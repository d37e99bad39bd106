"""Whoever misspells a word is told the nearest ones that are known."""

import pytest

from quizroom.knowledge.suggest import suggest

KNOWN = ("biceps_brachii", "biceps_femoris", "brachialis", "FCR", "FCU", "radial_nerve")


@pytest.mark.parametrize(
    "word, said",
    [
        ("biceps_brachi", 'did you mean "biceps_brachii"?'),
        ("FRC", 'did you mean "FCU" or "FCR"?'),
        ("radial nerve", 'did you mean "radial_nerve"?'),
        ("liver", "nothing known comes near: check the spelling or add it"),
    ],
)
def test_the_nearest_words_are_named(word: str, said: str) -> None:
    assert suggest(word, KNOWN) == said
