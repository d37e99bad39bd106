"""Items keyed anew: the key, what may be typed, and how it is explained."""

import pytest

from quizroom.questions.model import Item
from quizroom.questions.rekeying import Rekeying, fits, keeps_key, key_words, rekeyed
from quizroom.questions.typed import verdict
from tests.room.sample_items import all_formats, free_list, matching, one_best, ordering, pick_three, typed


def reasons(item: Item) -> dict[str, str]:
    return {option.letter: option.reason.text for option in item.options}


def letters(key: str, reason: str = "") -> Rekeying:
    return Rekeying(key=tuple(key), reason=reason)


def words(*terms: str) -> Rekeying:
    return Rekeying(terms=terms)


def test_an_option_keyed_besides_is_not_explained_as_wrong_but_as_keyed_with_the_dealt_reason_beside() -> (
    None
):
    now = rekeyed(one_best(), letters("BA"))
    assert now.key == ("A", "B")
    assert reasons(now)["A"] == "Your host keyed this answer. As dealt: Because: radial nerve."
    assert reasons(now)["B"] == reasons(one_best())["B"]


def test_an_option_no_longer_keyed_says_so() -> None:
    now = rekeyed(one_best(), letters("C"))
    assert reasons(now)["B"].startswith("Your host does not count this answer any more. As dealt: ")


def test_why_the_key_is_the_key_tells_the_hosts_reason_and_the_dealt_one() -> None:
    now = rekeyed(one_best(), letters("C", "The book of this course says so"))
    assert now.why.text == (
        "Your host keyed this item anew: The book of this course says so. As dealt: Because: the key is B."
    )


def test_an_ordering_and_a_matching_say_at_which_places_the_host_keyed_them() -> None:
    turned = rekeyed(ordering(), letters("ACDB"))
    assert [letter for letter, text in reasons(turned).items() if "Your host keyed" in text] == ["A", "C"]
    paired = rekeyed(matching(), letters("DCB"))
    assert [stem.reason.text.startswith("Your host keyed C here.") for stem in paired.stems] == [
        False,
        True,
        False,
    ]


def test_a_term_nearby_is_accepted_with_all_its_names_and_the_dealt_one_is_known_still() -> None:
    now = rekeyed(typed(), words("Radial  nerve"))
    assert verdict(now, "radial nerve").kind == "right"
    assert verdict(now, "radial nerve").because == (
        "Your host keyed this answer. As dealt: The radial nerve is another."
    )
    for before in ("axillary nerve", "circumflex nerve"):
        found = verdict(now, before)
        assert (found.kind, found.concept) == ("wrong", "axillary nerve")
        assert found.because.startswith("Your host does not count this answer any more.")


def test_own_words_of_the_host_are_accepted_beside_the_dealt_terms() -> None:
    now = rekeyed(typed(), words("axillary nerve", "nerve of the armpit"))
    assert [verdict(now, text).kind for text in ("circumflex nerve", "Nerve of the armpit")] == [
        "right",
        "right",
    ]


def test_who_names_another_name_of_what_was_dealt_changes_nothing() -> None:
    assert rekeyed(typed(), words("circumflex nerve")).accepted == typed().accepted


@pytest.mark.parametrize(
    "item,wish",
    [
        (one_best(), letters("E")),
        (one_best(), letters("BB")),
        (one_best(), letters("")),
        (one_best(), words("axillary nerve")),
        (pick_three(), letters("AB")),
        (ordering(), letters("CAD")),
        (ordering(), letters("CADD")),
        (matching(), letters("DA")),
        (matching(), letters("DAE")),
        (typed(), letters("A")),
        (typed(), words(" . ")),
        (free_list(), words("brachialis", "brachialis anticus", "deltoid")),
        (typed(), words(*(f"term {number}" for number in range(21)))),
    ],
)
def test_a_key_that_does_not_fit_the_item_is_told_from_one_that_does(item: Item, wish: Rekeying) -> None:
    assert not fits(item, wish)


@pytest.mark.parametrize("item", all_formats(), ids=lambda item: item.format)
def test_the_dealt_key_always_fits_and_keeps_itself(item: Item) -> None:
    wish = Rekeying(key=item.key, terms=tuple(one.text for one in item.accepted))
    assert fits(item, wish)
    assert keeps_key(item, rekeyed(item, wish))


@pytest.mark.parametrize(
    "item,wish,keeps",
    [
        (one_best(), letters("AB"), True),
        (one_best(), letters("A"), False),
        (pick_three(), letters("ABCE"), True),
        (pick_three(), letters("ABC"), False),
        (ordering(), letters("ACDB"), False),
        (matching(), letters("DCB"), False),
        (typed(), words("axillary nerve", "radial nerve"), True),
        (typed(), words("radial nerve"), False),
    ],
)
def test_a_dealt_key_is_kept_if_all_of_it_is_right_still(item: Item, wish: Rekeying, *, keeps: bool) -> None:
    assert keeps_key(item, rekeyed(item, wish)) is keeps


def test_a_key_can_be_read_in_one_line() -> None:
    assert key_words(rekeyed(one_best(), letters("AB"))) == "A: radial nerve; B: axillary nerve"
    assert key_words(ordering()).startswith("C: subclavian artery, then A: brachial artery, then ")
    assert key_words(matching()).startswith("biceps brachii – D: ulnar nerve; ")
    assert key_words(free_list()) == "biceps brachii; brachialis; coracobrachialis"
