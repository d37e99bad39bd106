"""Second answers for everybody, once the result is shown; for the desk at any time, with what is advised."""

from quizroom.analysis.talk import RightOf, TalkOfRound, advice, right_of, talk_of_round
from quizroom.marking import RoomMarks, as_second
from quizroom.room.answers import IN_PLACES
from quizroom.room.state import Room, Round
from quizroom.room.talk import may_talk
from quizroom.views.results import option_results, typed_results
from quizroom.views.rows import row_results
from quizroom.views.talk_model import ChangeFace, RightFace, SecondFace, SecondShare, SecondTyped, TalkPanel


def second_face(room: Room, marks: RoomMarks, number: int) -> SecondFace | None:
    """The second answers of a round; None where it was not answered again."""
    current = room.rounds[number - 1]
    marked = marks.seconds[number - 1]
    if current.again_at is None:
        return None
    first = right_of(marks.rounds[number - 1].marks).right
    if marked is None:
        return SecondFace(answered=0, right=0, first_right=first, options=(), rows=(), typed=())
    second = as_second(current)
    in_places = current.item.format in IN_PLACES
    options = () if in_places else option_results(second, marked, reasons=False)
    return SecondFace(
        answered=len(current.second_answers),
        right=right_of(marked.marks).right,
        first_right=first,
        options=tuple(SecondShare(letter=one.letter, count=one.count, share=one.share) for one in options),
        rows=tuple(
            SecondShare(letter=one.letter, count=one.count, share=one.share)
            for one in row_results(current.item, second, reasons=False)
        ),
        typed=tuple(
            SecondTyped(text=one.text, verdict=one.verdict, count=one.count, share=one.share)
            for one in typed_results(second, marked)
        ),
    )


def shown_second(room: Room, marks: RoomMarks) -> SecondFace | None:
    """The second answers of the current round, as far as all may know them."""
    if not room.rounds or room.rounds[-1].shown_at is None:
        return None
    return second_face(room, marks, len(room.rounds))


def talk_panels(room: Room, marks: RoomMarks) -> tuple[TalkPanel, ...]:
    """What the desk is told of every round that is talked over, or may be."""
    return tuple(
        _panel(room, marks, current)
        for current in room.rounds
        if current.talked_at is not None or (current.number == len(room.rounds) and may_talk(room))
    )


def _panel(room: Room, marks: RoomMarks, current: Round) -> TalkPanel:
    done = current.again_closed_at is not None
    told = talk_of_round(room, marks, current) if done else None
    first = right_of(marks.rounds[current.number - 1].marks)
    return TalkPanel(
        round=current.number,
        first=_face(first),
        advice=advice(first) if current.talked_at is None else None,
        second=second_face(room, marks, current.number),
        change=_change(told) if told is not None else None,
        twin_round=None if told is None else told.twin_round,
        twin=_face(told.twin) if told is not None and told.twin is not None else None,
    )


def _face(of: RightOf) -> RightFace:
    return RightFace(right=of.right, of=of.of, share=None if of.share is None else round(of.share, 4))


def _change(told: TalkOfRound) -> ChangeFace:
    change = told.change
    return ChangeFace(
        right_right=change.right_right,
        right_wrong=change.right_wrong,
        wrong_right=change.wrong_right,
        wrong_wrong=change.wrong_wrong,
        gain=None if told.gain is None else round(told.gain, 4),
        no_gain=told.no_gain,
    )
