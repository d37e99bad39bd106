"""What waits for a later round is told to nobody before, and to everybody then."""

from dataclasses import replace

from quizroom.marking import marks_of_room
from quizroom.questions.model import Item, NearTerm
from quizroom.questions.waiting import IT_WAITS
from quizroom.room.commands import CloseRound, DropItem, EndReview, OpenRound, ShowRecord
from quizroom.room.state import Room
from quizroom.views.own import own_view
from tests.room.sample_items import one_best
from tests.room.sample_items import typed as typed_item
from tests.room.samples import answering, ordered, says, writes
from tests.views.seen import public
from tests.views.twins import NOW


def again(item: str = "again") -> Item:
    """A later round about the deltoid, whose fact a reason of the first tells: that of the radial nerve."""
    return replace(one_best(item), facts=("fact of radial nerve",))


def explained(*items: Item) -> Room:
    """The first round of these items, answered with A, closed and explained."""
    room = ordered(answering(*items), says("ada", "A"))
    return ordered(room, CloseRound(round=1, by_host=True), ShowRecord(round=1))


def reasons(room: Room) -> list[str | None]:
    result = public(room).result
    assert result is not None
    return [option.reason for option in result.options]


def test_a_record_and_a_reason_wait_while_a_later_round_asks_for_them() -> None:
    room = explained(one_best(), again())
    assert (public(room).records, public(room).waiting) == ((), ("Deltoid",))
    assert reasons(room) == [
        IT_WAITS,
        *(f"Because: {nerve} nerve." for nerve in ("axillary", "median", "ulnar")),
    ]
    own = own_view(room, "ada", marks_of_room(room), NOW)
    assert own.result is not None
    assert [reason.reason for reason in own.result.reasons] == [IT_WAITS]


def test_they_are_told_with_the_last_round_about_the_muscle() -> None:
    room = ordered(explained(one_best(), again()), OpenRound(round=2))
    room = ordered(room, CloseRound(round=2, by_host=True), ShowRecord(round=2))
    assert ([record.name for record in public(room).records], public(room).waiting) == (["Deltoid"], ())
    assert IT_WAITS not in reasons(room)


def test_they_are_told_at_once_if_the_later_round_is_dropped_or_the_review_ends() -> None:
    room = explained(one_best(), again())
    for order in (DropItem(position=0, item="again"), EndReview()):
        after = ordered(room, order)
        assert [record.name for record in public(after).records] == ["Deltoid"]
        assert IT_WAITS not in reasons(after)


def test_before_the_record_is_shown_nothing_is_said_to_wait() -> None:
    room = ordered(answering(one_best(), again()), CloseRound(round=1, by_host=True))
    assert (public(room).records, public(room).waiting) == ((), ())


def test_what_a_typed_wrong_term_is_waits_while_a_later_round_asks_for_it() -> None:
    near = NearTerm(
        concept="radial nerve",
        term="radial nerve",
        tells="It supplies triceps.",
        facts=("fact of radial nerve",),
    )
    item = replace(typed_item(), near=(near,))
    for later, told in (((again(),), IT_WAITS), ((), "It supplies triceps.")):
        room = ordered(answering(item, *later), writes("ada", "radial nerve"))
        room = ordered(room, CloseRound(round=1, by_host=True), ShowRecord(round=1))
        own = own_view(room, "ada", marks_of_room(room), NOW)
        assert own.result is not None
        assert [reason.reason for reason in own.result.reasons] == [told]
        assert "triceps" not in str(public(room)) or not later
