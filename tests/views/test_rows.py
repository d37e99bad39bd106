"""What a closed ordering or matching shows: what belongs where, and how many had it right."""

from quizroom.marking import marks_of_room
from quizroom.questions.model import Item
from quizroom.room.state import Room
from quizroom.views.desk import desk_view
from quizroom.views.desk_model import DeskItem
from quizroom.views.item_model import ItemFace
from quizroom.views.own import own_view
from quizroom.views.own_model import OwnResult
from quizroom.views.public import public_view
from quizroom.views.result_model import LetterCount, ResultFace
from tests.room.sample_items import MUSCLES, matching, one_best, ordering
from tests.room.samples import CLOSE, RECORD, answering, ordered, says
from tests.views.twins import NOW


def face(item: Item) -> ItemFace:
    room = answering(item)
    found = public_view(room, marks_of_room(room), NOW).item
    assert found is not None
    return found


def result(room: Room) -> ResultFace:
    found = public_view(room, marks_of_room(room), NOW).result
    assert found is not None
    return found


def own(room: Room) -> OwnResult:
    found = own_view(room, "ada", marks_of_room(room), NOW).result
    assert found is not None
    return found


def desk_item(room: Room, place: int) -> DeskItem:
    return desk_view(room, marks_of_room(room), NOW).items[place]


def ordered_arteries() -> Room:
    return ordered(answering(ordering(key="CADB")), says("ada", *"CABD"), says("bo", *"CADB"), CLOSE)


def matched_nerves() -> Room:
    room = answering(matching(key="DAB"))
    return ordered(room, says("ada", "D", "C", ""), says("bo", "D", "C", "B"), CLOSE)


def test_rows_are_asked_with_the_options_they_share() -> None:
    assert face(matching()).stems == MUSCLES[:3]
    assert face(ordering()).stems == face(one_best()).stems == ()


def test_an_order_is_shown_place_by_place_with_how_many_had_it_right() -> None:
    found = result(ordered_arteries())
    assert [(row.letter, row.text, row.count, row.share) for row in found.rows] == [
        ("C", "subclavian artery", 2, 1.0),
        ("A", "brachial artery", 2, 1.0),
        ("D", "radial artery", 1, 0.5),
        ("B", "axillary artery", 1, 0.5),
    ]
    assert found.rows[2].letters == (LetterCount(letter="B", count=1),)
    assert (found.options, found.mean_mark) == ((), 0.8333)
    assert found.key_text == tuple(row.text for row in found.rows)


def test_rows_show_their_keys_and_what_was_put_there_instead() -> None:
    found = result(matched_nerves())
    assert [(row.stem, row.letter, row.count) for row in found.rows] == [
        ("biceps brachii", "D", 2),
        ("triceps brachii", "A", 0),
        ("brachialis", "B", 1),
    ]
    assert found.rows[1].letters == (LetterCount(letter="C", count=2),)
    assert found.rows[2].letters == ()
    assert found.key_text[0] == "biceps brachii: ulnar nerve"


def test_reasons_come_with_the_record_and_not_before() -> None:
    assert [row.reason for row in result(matched_nerves()).rows] == [None] * 3
    assert own(matched_nerves()).reasons == ()
    explained = result(ordered(matched_nerves(), RECORD))
    assert explained.rows[0].reason == "Because: biceps brachii has D."


def test_each_row_of_ones_own_answer_has_its_reason() -> None:
    found = own(ordered(matched_nerves(), RECORD))
    assert (found.verdict, round(found.mark, 3)) == ("part", 0.333)
    assert [(one.text, one.right) for one in found.reasons] == [
        ("biceps brachii – D: ulnar nerve", True),
        ("triceps brachii – C: median nerve", False),
        ("brachialis – no answer", False),
    ]
    assert found.reasons[1].reason == "Because: triceps brachii has A. Because: median nerve."


def test_each_place_of_ones_own_order_has_its_reason() -> None:
    found = own(ordered(ordered_arteries(), RECORD))
    assert [(one.text, one.right) for one in found.reasons][1:3] == [
        ("2 – A: brachial artery", True),
        ("3 – B: axillary artery", False),
    ]
    assert found.reasons[2].reason == "Because: radial artery."


def test_the_desk_knows_what_belongs_where_before_and_while_it_is_answered() -> None:
    ahead = desk_item(answering(one_best(), matching()), 1).rows[0]
    assert (ahead.letter, ahead.count, ahead.reason) == ("D", 0, "Because: biceps brachii has D.")
    open_item = desk_item(ordered(answering(matching()), says("ada", "D", "", "A")), 0)
    assert [row.count for row in open_item.rows] == [1, 0, 0]
