"""What a class chose is counted from the log, without who."""

from dataclasses import asdict, replace

from hypothesis import given
from hypothesis import strategies as st

from quizroom.analysis.choices import choices_of, summed
from quizroom.questions.experience import AskCount, ask_key
from quizroom.questions.model import Item
from quizroom.room.commands import (
    Command,
    OpenRound,
    RemovePlayer,
    RestoreItem,
    RuleOnWords,
    StrikeItem,
)
from quizroom.room.state import Room
from tests.room.sample_items import free_list, matching, one_best, ordering, pick_three, typed
from tests.room.samples import CLOSE, after, answering, gathered, ordered, plan, says, writes

PLAYERS = tuple(f"p{number}" for number in range(9))
COUNTS = st.builds(
    AskCount,
    ask=st.sampled_from("abc"),
    typed=st.booleans(),
    answered=st.integers(1, 50),
    right=st.integers(0, 50),
    wrong=st.dictionaries(st.sampled_from("xyz"), st.integers(1, 50)),
)


def played(item: Item, *answers: Command, at: float = 20) -> Room:
    """A closed round of this item; all answers come so many seconds after its opening."""
    room = answering(item, one_best("next"), players=PLAYERS)
    return ordered(ordered(room, *answers, at=after(at)), CLOSE, at=after(at + 1))


def test_right_and_wrong_are_counted_by_concept() -> None:
    item = one_best(key="B")
    room = played(item, says("p1", "B"), says("p2", "C"), says("p3", "C"), says("p4", "A"))
    assert choices_of(room) == (
        AskCount(
            ask=ask_key(item),
            typed=False,
            answered=4,
            right=1,
            wrong={"median nerve": 2, "radial nerve": 1},
        ),
    )


def test_only_the_last_answer_of_a_player_counts() -> None:
    room = played(one_best(), says("p1", "A"), says("p1", "B"))
    assert [(one.answered, one.right, one.wrong) for one in choices_of(room)] == [(1, 1, {})]


def test_rapid_guesses_are_left_out() -> None:
    assert choices_of(played(one_best(), says("p1", "A"), at=0.3)) == ()


def test_struck_items_are_left_out_until_they_are_restored() -> None:
    room = played(one_best(), says("p1", "A"))
    struck = ordered(room, StrikeItem(round=1))
    assert choices_of(struck) == ()
    assert choices_of(ordered(struck, RestoreItem(round=1))) == choices_of(room)


def test_an_open_round_is_not_counted_yet() -> None:
    room = played(one_best(), says("p1", "A"))
    assert choices_of(ordered(room, OpenRound(round=2), says("p2", "A", round_=2))) == choices_of(room)


def test_who_was_sent_out_is_counted_no_more() -> None:
    room = played(one_best(), says("p1", "A"), says("p2", "A"))
    assert choices_of(ordered(room, RemovePlayer(player="p1")))[0].answered == 1


def test_of_a_set_each_wrong_member_counts() -> None:
    room = played(pick_three(key="ACE"), says("p1", "A", "C", "E"), says("p2", "A", "B", "D"))
    (count,) = choices_of(room)
    assert (count.answered, count.right) == (2, 1)
    assert count.wrong == {"triceps brachii": 1, "deltoid": 1}


def test_typed_terms_of_other_things_count_and_misspelt_or_unknown_words_do_not() -> None:
    room = played(
        typed(),
        writes("p1", "radial nerve"),
        writes("p2", "axillary nerve"),
        writes("p3", "qqqq"),
    )
    (count,) = choices_of(room)
    assert (count.typed, count.answered, count.right, count.wrong) == (True, 3, 1, {"radial nerve": 1})


def test_a_ruling_of_the_host_is_followed() -> None:
    room = played(typed(), writes("p1", "radial nerve"))
    ruled = ordered(room, RuleOnWords(round=1, words="radial nerve", accept=True))
    assert [(one.right, one.wrong) for one in choices_of(ruled)] == [(1, {})]


def test_orders_and_rows_count_as_answered_and_name_no_error() -> None:
    for item, said in ((ordering(key="CADB"), "CADB"), (matching(key="DAB"), "DAB")):
        (count,) = choices_of(played(item, says("p1", *said)))
        assert (count.answered, count.right, count.wrong) == (1, 1, {})


def test_a_rehearsal_teaches_nothing_about_classes() -> None:
    room = played(free_list(), writes("p1", "triceps brachii"))
    assert choices_of(room)
    assert choices_of(replace(room, plan=replace(room.plan, rehearsal=True))) == ()


def test_no_count_holds_a_player() -> None:
    room = played(one_best(), *(says(player, "A") for player in PLAYERS))
    assert set(asdict(choices_of(room)[0])) == {"ask", "typed", "answered", "right", "wrong"}
    assert not any(player in str(choices_of(room)) for player in (*PLAYERS, *(p.title() for p in PLAYERS)))


def test_a_review_that_nobody_answered_counts_nothing() -> None:
    assert choices_of(gathered(by=plan())) == ()


@given(st.lists(COUNTS, max_size=12))
def test_summing_loses_nobody_and_does_not_depend_on_the_order(counts: list[AskCount]) -> None:
    total = summed(counts)
    assert sum(one.answered for one in total) == sum(one.answered for one in counts)
    assert sum(sum(one.wrong.values()) for one in total) == sum(sum(one.wrong.values()) for one in counts)
    assert summed(reversed(counts)) == total
    assert len({(one.ask, one.typed) for one in total}) == len(total)
