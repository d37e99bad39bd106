"""Nothing but knowledge tells the key: no echo of the question, no length, no far-fetched company."""

import pytest

from quizroom.questions.cues import clangs, is_short_beside, stands_out_in_length, stems_of


@pytest.mark.parametrize(
    "stem,echo,silent",
    [
        ("the coracoid process", "coracobrachialis", "brachialis"),
        ("flexor carpi ulnaris", "ulnar nerve", "median nerve"),
        ("brachioradialis", "radial nerve", "ulnar nerve"),
        ("flexor carpi radialis", "flexion", "extension"),
        ("supinator", "supination", "pronator teres"),
        ("tibialis anterior", "tibial nerve", "anterior border"),
    ],
)
def test_an_echo_is_a_shared_stem_of_telling_words(stem: str, echo: str, silent: str) -> None:
    assert clangs(stems_of(stem), stems_of(echo))
    assert not clangs(stems_of(stem), stems_of(silent))


@pytest.mark.parametrize(
    "key,others,long,short",
    [
        ("twelve chars", ["twelve chars", "ten chars.", "nine char"], False, False),  # tied for the longest
        ("twelve chars", ["eleven char", "eleven char", "eleven char"], True, False),  # the longest alone
        ("twelve chars", ["twelve chars", "four", "five"], True, False),  # by half longer than the mean
        ("five.", ["eleven char", "eleven char"], False, True),
    ],
)
def test_a_key_is_neither_the_longest_nor_far_from_the_mean(
    key: str,
    others: list[str],
    long: bool,  # noqa: FBT001 -- read from the table
    short: bool,  # noqa: FBT001 -- read from the table
) -> None:
    """Within a quarter of the mean: a suggestion of the trade, no source."""
    assert stands_out_in_length(key, others) == long
    assert is_short_beside(key, others) == short
