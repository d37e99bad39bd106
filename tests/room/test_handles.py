"""Handles: any script is welcome, nothing invisible is, and no two may be taken for each other."""

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.room.handles import is_good_handle, same_handle, tidy_handle


@pytest.mark.parametrize(
    "handle",
    [
        "Teal Talus",
        "O'Dock",
        "Müller-Elder",
        "Ada",
        "橈骨",
        "עצם העצד",
        "عظم",
        "ᑕᑎ",
        "7",
        "Ⅳ",
        "Bo 🦴",
        "x" * 40,
    ],
)
def test_any_script_makes_a_good_handle(handle: str) -> None:
    assert tidy_handle(handle) == handle
    assert is_good_handle(handle)


@pytest.mark.parametrize(
    "raw",
    [
        "",
        " ",
        "\t\n",
        "🦴",
        "👩‍🔬🦴",
        "...",
        "x" * 41,
        "\u202e",
        "\u200b\u200d",
        "\u3164",
        "\u115f\u1160",
        "\ufe0f",
    ],
)
def test_a_handle_must_show_a_letter_or_figure_and_be_short(raw: str) -> None:
    assert not is_good_handle(tidy_handle(raw))


@pytest.mark.parametrize(
    "raw,tidied",
    [
        ("  Teal \t Talus\n", "Teal Talus"),
        ("Teal\u00a0Talus", "Teal Talus"),
        ("\u202eTeal\u2066 Talus\u2069", "Teal Talus"),  # right-to-left override, isolates
        ("Te\u200bal\ufeff", "Teal"),  # zero width space, byte order mark
        ("Te\x00al\x1b[31m", "Teal[31m"),
        ("Te\u034fal\ufe0f", "Teal"),  # grapheme joiner, variation selector
        ("e\u0301", "é"),
        ("e\u034f\u0301", "é"),
        ("Teal\u2028Talus", "Teal Talus"),  # line separator
    ],
)
def test_what_cannot_be_seen_is_dropped(raw: str, tidied: str) -> None:
    assert tidy_handle(raw) == tidied


@pytest.mark.parametrize(
    "one,other",
    [
        ("Teal Talus", "teal TALUS"),
        ("Talus", "\uff34\uff41\uff4c\uff55\uff53"),  # full-width letters
        ("Straße", "STRASSE"),
        ("Müller", "Mu\u0308ller"),
        ("fibula", "ﬁbula"),  # a ligature
        ("Talus²", "talus2"),
    ],
)
def test_handles_that_look_alike_are_the_same(one: str, other: str) -> None:
    assert same_handle(one, other)
    assert same_handle(other, one)


def test_different_handles_are_different() -> None:
    assert not same_handle("Ada", "Ade")
    assert not same_handle("Ada 1", "Ada 2")


@given(st.text(max_size=60))
def test_a_tidied_handle_is_tidy_and_holds_no_control(raw: str) -> None:
    handle = tidy_handle(raw)
    assert tidy_handle(handle) == handle
    assert not any(unicodedata.category(character).startswith("C") for character in handle)
    assert not {"\n", "\t", "\u2028"} & set(handle)
