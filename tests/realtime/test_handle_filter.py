"""Handles on the wall. The rude ones are a matter of common practice, no source."""

import pytest
from better_profanity import Profanity
from hypothesis import given
from hypothesis import strategies as st

from quizroom.realtime.handle_filter import ByBeginning, reads_rudely

LISTED = Profanity().CENSOR_WORDSET
BY_BEGINNING = ByBeginning(LISTED)


@pytest.mark.parametrize(
    "handle",
    [
        "Teal Talus",
        "Scunthorpe",
        "Müller-Elder",
        "O'Dock",
        "Gluteus Maximus",
        "Rectus Femoris",
        "Yellowhammer of the Inferior Pubic Ramus",
        "Woodcock 3",
        "Player 455",
        "Player 717",
        "محمد",
        "山田",
    ],
)
def test_decent_handles_pass(handle: str) -> None:
    assert not reads_rudely(handle)


@pytest.mark.parametrize(
    "spelling", ["{0}", "{0}1", "XX {0} XX", "f.u.c.k", "f u c k", "\uff46\uff55\uff43\uff4b"]
)
def test_rude_ones_do_not_however_they_are_spaced(spelling: str) -> None:
    assert reads_rudely(spelling.format("fuck"))


@given(
    st.text("aAbcdfhiklnprstuy4$@*1!", min_size=1, max_size=9)
    | st.sampled_from(["sh1t", "@$$", "a55", "b!tch"])
)
def test_a_word_is_found_wherever_the_whole_list_would_find_it(word: str) -> None:
    assert (word in BY_BEGINNING) == any(word == entry for entry in LISTED)
