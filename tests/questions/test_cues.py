"""Nothing but knowledge tells the key: no echo of the question, no length, no far-fetched company."""

import pytest

from quizroom.questions.cues import clangs, stems_of


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
