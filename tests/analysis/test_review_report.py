"""What a report takes in, what it leaves out, and what it says of it."""

from dataclasses import replace

import pytest

from quizroom.analysis.cannot_say import what_numbers_cannot_say
from quizroom.analysis.explain_again import need
from quizroom.analysis.review_report import ReviewReport, review_report
from quizroom.marking import marks_of_room
from quizroom.questions.model import Item
from quizroom.room.change_commands import FlagItem, RekeyItem
from quizroom.room.commands import CloseRound, Command, EnterSeat, OpenRound, RestoreItem, StrikeItem
from quizroom.room.state import Room
from tests.room.sample_items import free_list, matching, one_best, ordering, pick_three, typed
from tests.room.samples import after, gathered, ordered, plan, says, seat, writes

CLASS = tuple(f"p{number:02}" for number in range(24))


def reported(room: Room) -> ReviewReport:
    return review_report(room, marks_of_room(room))


def round_of(room: Room, number: int, *answers: Command, at: float = 20) -> Room:
    """The room after a round that was opened, answered so many seconds later, and closed."""
    opened = 100.0 * number
    room = ordered(room, OpenRound(round=number), at=after(opened))
    room = ordered(room, *answers, at=after(opened + at))
    return ordered(room, CloseRound(round=number, by_host=True), at=after(opened + at + 1))


def played(item: Item, *answers: Command, at: float = 20) -> ReviewReport:
    """The report of one round."""
    room = gathered(item, one_best("next"), players=CLASS)
    return reported(round_of(room, 1, *answers, at=at))


def test_who_came_late_is_missing_in_earlier_rounds_and_not_wrong() -> None:
    room = gathered(one_best("one"), one_best("two"), players=("ada", "bo"))
    room = round_of(room, 1, says("ada", "B"), says("bo", "B"))
    room = ordered(room, seat("cem"), at=after(190))
    room = round_of(room, 2, says("ada", "B", round_=2), says("cem", "A", round_=2))
    first, second = reported(room).sheets
    assert (first.numbers.answered, first.numbers.silent, first.numbers.difficulty) == (2, 0, 1.0)
    assert (second.numbers.answered, second.numbers.silent, second.numbers.difficulty) == (2, 1, 0.5)
    assert {one.handle: one.rounds for one in reported(room).attendance} == {
        "Ada": ("answered", "answered"),
        "Bo": ("answered", "silent"),
        "Cem": ("before", "answered"),
    }


def test_rapid_guesses_are_counted_beside_the_numbers() -> None:
    quick = played(one_best(), *(says(player, "A") for player in CLASS), at=0.3).sheets[0].numbers
    assert (quick.answered, quick.rapid, quick.difficulty) == (0, 24, None)


def test_in_a_rehearsal_programs_may_be_quick() -> None:
    room = gathered(one_best(), by=replace(plan(), rehearsal=True), players=CLASS)
    numbers = reported(round_of(room, 1, *(says(player, "A") for player in CLASS), at=0.3)).sheets[0].numbers
    assert (numbers.answered, numbers.rapid) == (24, 0)


def test_a_struck_item_is_in_no_number_until_it_is_restored() -> None:
    room = round_of(gathered(one_best("one"), one_best("two"), players=CLASS), 1, says("p01", "A"))
    struck = ordered(room, StrikeItem(round=1))
    assert (reported(struck).sheets, reported(struck).struck, reported(struck).confusions) == ((), (1,), ())
    assert reported(struck).attendance == reported(room).attendance
    restored = reported(ordered(struck, RestoreItem(round=1)))
    assert [one.kind for one in restored.changes] == ["struck", "restored"]
    assert replace(restored, version=0, changes=()) == replace(reported(room), version=0)


def test_the_order_in_which_people_came_changes_nothing() -> None:
    answers = [says(player, "BACD"[place % 4]) for place, player in enumerate(CLASS)]
    one = reported(round_of(gathered(one_best(), players=CLASS), 1, *answers))
    other = reported(round_of(gathered(one_best(), players=reversed(CLASS)), 1, *reversed(answers)))
    assert one.sheets == other.sheets
    assert (one.again, one.confusions, one.mastery) == (other.again, other.confusions, other.mastery)


def test_distractors_function_if_a_twentieth_chose_them_and_not_the_stronger_part() -> None:
    """24 people: 12 take the key, 11 one distractor, one another, nobody the third: 1 of 24 is under 5 %."""
    letters = "B" * 12 + "A" * 11 + "C"
    sheet = played(one_best(), *(says(player, letters[place]) for place, player in enumerate(CLASS))).sheets[
        0
    ]
    found = sheet.numbers.distractors
    assert found is not None
    assert [(one.people, one.functions) for one in found.options] == [
        (11, True),
        (12, None),
        (1, False),
        (0, False),
    ]
    assert (found.functioning, found.distractors) == (1, 3)
    assert found.efficiency == pytest.approx(1 / 3)
    assert sheet.numbers.guessing_corrected == pytest.approx((12 - 12 / 3) / 24)


def test_a_distractor_of_the_stronger_part_does_not_function_and_the_key_is_suspect() -> None:
    items = tuple(replace(one_best(f"item {number}"), facts=(f"fact {number}",)) for number in range(4))
    room = gathered(*items, players=CLASS)
    for number in (1, 2, 3):
        strong = [
            says(player, "B" if place < 12 else "A", round_=number) for place, player in enumerate(CLASS)
        ]
        room = round_of(room, number, *strong)
    turned = [says(player, "C" if place < 12 else "B", round_=4) for place, player in enumerate(CLASS)]
    report = reported(round_of(room, 4, *turned))
    assert [sheet.numbers.verdict for sheet in report.sheets] == ["very good"] * 3 + ["suspect key"]
    last = report.sheets[3].numbers
    assert last.point_biserial == pytest.approx(-1)
    assert last.distractors is not None
    assert [one.functions for one in last.distractors.options] == [False, None, False, False]


def test_parts_of_a_mark_keep_an_item_out_of_kr_20_and_not_out_of_alpha() -> None:
    room = gathered(one_best("one"), pick_three("two"), one_best("three"), players=("ada", "bo", "cem"))
    for number in (1, 3):
        answers = [
            says(one, letter, round_=number) for one, letter in zip(("ada", "bo", "cem"), "BBA", strict=True)
        ]
        room = round_of(room, number, *answers)
        if number == 1:
            sets = (("ada", "ACE"), ("bo", "AC"), ("cem", "BD"))
            room = round_of(room, 2, *(says(one, *letters, round_=2) for one, letters in sets))
    found = reported(room).reliability
    assert found is not None
    assert (found.items, found.of_0_and_1) == (3, 2)
    assert found.kr_20 == pytest.approx(1.0)
    assert found.alpha is not None
    assert found.alpha.value < 1


def test_confusions_by_letters_in_rows_in_sets_and_typed() -> None:
    room = gathered(
        one_best("a"),
        matching("b", key="DAB"),
        pick_three("c", key="ACE"),
        typed("d"),
        free_list("e"),
        ordering("f"),
        players=("ada", "bo"),
    )
    room = round_of(room, 1, says("ada", "C"), says("bo", "C"))
    room = round_of(room, 2, says("ada", "D", "B", "B", round_=2))
    room = round_of(room, 3, says("ada", "A", "B", "C", round_=3), says("bo", "A", "B", "D", round_=3))
    room = round_of(room, 4, writes("ada", "radial nerve", round_=4), writes("bo", "qqqq", round_=4))
    room = round_of(room, 5, writes("ada", "biceps brachii", "brachialis", "triceps brachii", round_=5))
    room = round_of(room, 6, says("ada", *"ACDB", round_=6))
    found = {(one.wanted, one.taken): (one.people, one.of) for one in reported(room).confusions}
    assert found == {
        ("axillary nerve", "median nerve"): (2, 2),
        ("radial nerve", "axillary nerve"): (1, 1),
        ("coracobrachialis", "triceps brachii"): (2, 3),
        ("axillary nerve", "radial nerve"): (1, 2),
    }
    assert [place.right for place in reported(room).sheets[1].places] == [1, 0, 1]
    assert [(word.text, word.kind) for word in reported(room).sheets[3].typed] == [
        ("qqqq", "wrong"),
        ("radial nerve", "wrong"),
    ]


def test_what_to_explain_again_is_ranked_by_need() -> None:
    easy, shared, hard = (replace(one_best(name), facts=(name,)) for name in ("easy", "shared", "hard"))
    room = gathered(easy, shared, hard, players=CLASS)
    wanted = {1: "B" * 23 + "A", 2: "B" * 17 + "A" * 7, 3: "B" * 6 + "A" * 6 + "C" * 6 + "D" * 6}
    for number, letters in wanted.items():
        room = round_of(
            room,
            number,
            *(says(one, letter, round_=number) for one, letter in zip(CLASS, letters, strict=True)),
        )
    again = reported(room).again
    assert [(one.item.id, one.standing) for one in again] == [("hard", "not yet"), ("shared", "has it")]
    assert (again[1].taken, again[1].took) == ("radial nerve", 7)
    assert again[0].need == pytest.approx(need(missed=18, people=24, took=6, sure_and_wrong=0))


def test_need_as_the_handbook_works_it_out() -> None:
    """12 of 20 missed (Wilson from 0.387), 8 took the same term, 3 were certain and wrong."""
    assert need(missed=12, people=20, took=8, sure_and_wrong=3) == pytest.approx(
        0.387 + 0.1 + 0.0375, abs=5e-4
    )


def test_certain_and_wrong_counts_where_certainty_is_asked_for() -> None:
    room = gathered(one_best(), by=replace(plan(), certainty=True), players=("ada", "bo"))
    answers = (replace(says("ada", "A"), certainty=3), replace(says("bo", "A"), certainty=1))
    report = reported(round_of(room, 1, *answers))
    assert [one.sure_and_wrong for one in report.again] == [1]
    assert report.sureness is not None
    assert report.sureness.marks == -6


def test_small_classes_are_told_in_words() -> None:
    report = played(one_best(), *(says(player, "B") for player in CLASS[:4]))
    words = " ".join(what_numbers_cannot_say(report))
    assert "4 people answered." in words
    assert "from 15 to 85 %" in words
    assert "No verdict on an item is given with fewer than 20 people." in words
    nobody = reported(gathered(by=plan()))
    assert what_numbers_cannot_say(nobody) == (
        "Nobody has answered an item that counts, so there is nothing to compute yet.",
    )
    rehearsed = replace(report, is_rehearsal=True)
    assert what_numbers_cannot_say(rehearsed)[0].startswith("This was a rehearsal")


def test_a_round_that_is_open_is_not_in_the_report() -> None:
    room = round_of(gathered(one_best("one"), one_best("two"), players=CLASS), 1, says("p01", "A"))
    opened = ordered(room, OpenRound(round=2), says("p02", "A", round_=2), at=after(300))
    assert replace(reported(opened), version=0) == replace(reported(room), version=0)


def test_the_same_handle_is_nobody_elses_name() -> None:
    room = gathered(one_best(), players=())
    room = ordered(room, EnterSeat(player="secret id", handle="Teal Talus", key_hash="k", owner="owner key"))
    report = reported(round_of(room, 1, says("secret id", "A")))
    assert [one.handle for one in report.attendance] == ["Teal Talus"]
    assert "owner key" not in str(report)
    assert "secret id" not in str(report)


def test_an_item_that_was_keyed_anew_and_flagged_says_so() -> None:
    answers = [says(player, "BC"[place % 2]) for place, player in enumerate(CLASS)]
    room = round_of(gathered(one_best(), players=CLASS), 1, *answers)
    room = ordered(room, FlagItem(player="p01", round=1, text="books differ"))
    before, after = reported(room), reported(ordered(room, RekeyItem(round=1, key=("B", "C"), by="owner")))
    dealt = before.sheets[0]
    assert (dealt.is_rekeyed, dealt.flags, dealt.numbers.difficulty) == (False, 1, 0.5)
    sheet = after.sheets[0]
    assert (sheet.is_rekeyed, sheet.numbers.difficulty, sheet.numbers.guessing_corrected) == (True, 1.0, None)
    assert (before.confusions[0].people, after.confusions) == (12, ())
    assert [(one.kind, one.by) for one in after.changes] == [("rekeyed", "owner")]
