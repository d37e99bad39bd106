"""What a class really chose, question by question: counts without who, derived from the log of a review."""

from collections import Counter
from collections.abc import Iterable, Iterator

from quizroom.analysis.rapid import is_rapid
from quizroom.marking import RoundMarks, counts, marks_of_room
from quizroom.questions.experience import AskCount, ask_key
from quizroom.questions.model import TYPED_FORMATS, Item
from quizroom.room.rekeying import keeps_dealt_key
from quizroom.room.state import Answer, Room, Round

_BY_LETTER = ("one_best", "pick_n")


def choices_of(room: Room) -> tuple[AskCount, ...]:
    """The counts of a review as it now stands: closed rounds alone, without struck items and rapid guesses.

    Right is who has the full mark; where the host ruled on words, the ruling counts. A rehearsal, in which
    programs answer, tells nothing about classes; nor does an item whose dealt key the host took away,
    since it would be dealt with that key again.
    """
    if room.plan.rehearsal or room.plan.imported:  # one read from a file may have been counted elsewhere
        return ()
    rounds = zip(room.rounds, marks_of_room(room).rounds, strict=True)
    return summed(
        _count(current, marked) for current, marked in rounds if counts(current) and keeps_dealt_key(current)
    )


def summed(all_counts: Iterable[AskCount]) -> tuple[AskCount, ...]:
    """One count for each question and way of answering, sorted; those of several classes are added."""
    found: dict[tuple[str, bool], AskCount] = {}
    for one in all_counts:
        known = found.get((one.ask, one.typed))
        found[one.ask, one.typed] = one if known is None else _added(known, one)
    return tuple(found[key] for key in sorted(found) if found[key].answered)


def _added(one: AskCount, other: AskCount) -> AskCount:
    return AskCount(
        ask=one.ask,
        typed=one.typed,
        answered=one.answered + other.answered,
        right=one.right + other.right,
        wrong=dict(Counter(one.wrong) + Counter(other.wrong)),
    )


def _count(current: Round, marked: RoundMarks) -> AskCount:
    considered = {
        player: answer for player, answer in current.answers.items() if not is_rapid(current, answer)
    }
    wrong = (concept for answer in considered.values() for concept in _wrong(current.item, answer, marked))
    return AskCount(
        ask=ask_key(current.item),
        typed=current.item.format in TYPED_FORMATS,
        answered=len(considered),
        right=sum(marked.marks[player] >= 1 for player in considered),
        wrong=dict(sorted(Counter(wrong).items())),
    )


def _wrong(item: Item, answer: Answer, marked: RoundMarks) -> Iterator[str]:
    """What this answer takes for the key, each concept once; rows and orders have no single key."""
    if item.format in _BY_LETTER:
        by_letter = {option.letter: option.concept for option in item.options}
        yield from (by_letter[letter] for letter in answer.choice if letter not in item.key)
    elif item.format in TYPED_FORMATS:
        accepted = {one.concept for one in item.accepted}
        verdicts = (marked.verdicts[text] for text in answer.typed)
        meant = (found.concept for found in verdicts if found.kind == "wrong")
        yield from dict.fromkeys(concept for concept in meant if concept and concept not in accepted)
