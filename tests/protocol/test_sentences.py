"""Every refusal has a sentence for people."""

from typing import get_args

import pytest

from quizroom.protocol.sentences import SENTENCES, FailureCode, WireCode
from quizroom.room.refusals import RefusalCode

CODES = {*get_args(RefusalCode), *get_args(WireCode), *get_args(FailureCode)}


def test_every_code_has_its_sentence_and_no_sentence_is_left_over() -> None:
    assert set(SENTENCES) == CODES


@pytest.mark.parametrize("code", sorted(CODES))
def test_a_sentence_begins_with_a_capital_and_ends_with_a_full_stop(code: str) -> None:
    sentence = {str(known): text for known, text in SENTENCES.items()}[code]
    assert sentence[0].isupper()
    assert sentence.endswith(".")
    assert "_" not in sentence
    assert 12 <= len(sentence) <= 110


def test_no_two_codes_say_the_same() -> None:
    assert len(set(SENTENCES.values())) == len(SENTENCES)
