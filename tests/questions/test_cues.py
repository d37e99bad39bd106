"""Nothing but knowledge tells the key: no echo of the question, no length, no far-fetched company."""

import pytest

from quizroom.questions.cues import clangs, stands_out_in_length, stems_of
from tests.questions.lists import all_items


def test_the_wrong_options_echo_the_question_if_the_key_does() -> None:
    for item in all_items():
        stem = stems_of(item.stem)
        echoes = {option.letter: clangs(stem, stems_of(option.text)) for option in item.options}
        keys = [letter for letter in item.key if echoes[letter]]
        if 2 * len(keys) > len(item.key):
            assert any(echoes[letter] for letter in set(echoes) - set(item.key)), item.stem


def test_the_key_does_not_stand_out_by_its_length() -> None:
    single = [item for item in all_items() if item.format == "one_best"]
    longest = 0
    for item in single:
        key = next(option.text for option in item.options if option.letter in item.key)
        others = [option.text for option in item.options if option.letter not in item.key]
        assert not stands_out_in_length(key, others), item.stem
        longest += len(key) > max(map(len, others))
    assert longest / len(single) < 0.3


def test_nine_wrong_options_of_ten_come_from_a_source_that_teaches() -> None:
    sources = [option.source for item in all_items() for option in item.options if option.source != "key"]
    assert sources.count("same_region") / len(sources) < 0.15


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
