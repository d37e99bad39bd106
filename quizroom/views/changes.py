"""What the desk sees of flags and changes, and a seat of its own flag."""

from collections.abc import Iterator

from quizroom.questions.rekeying import key_words
from quizroom.room.change_noting import changes_of
from quizroom.room.changes import Change
from quizroom.room.flags import flags_up
from quizroom.room.state import Player, Room, Round
from quizroom.views.changes_model import ChangeRow, FlagsFace, FlagText, OwnFlag
from quizroom.views.moment import milliseconds


def change_rows(room: Room) -> tuple[ChangeRow, ...]:
    """All changes of a review in words, the latest last."""
    return tuple(
        ChangeRow(
            round=one.round,
            kind=one.kind,
            text=words_of(one),
            reason=one.reason,
            by=one.by,
            at=None if one.at is None else milliseconds(one.at),
        )
        for one in changes_of(room)
    )


def words_of(change: Change) -> str:
    """A change in words, without who and when."""
    match change.kind:
        case "struck":
            return "Struck: out of all marks"
        case "restored":
            return "Counts again"
        case "rekeyed":
            return f"Keyed anew: {change.what}"
        case "key_restored":
            return f"Keyed as dealt again: {change.what}"
        case "words_accepted":
            return f"Accepted: “{change.what}”"
        case "words_refused":
            return f"Refused: “{change.what}”"
        case "seated":
            return f"Seated a player at {change.what}" if change.what else "Took a player from a bench"
        case "bench_renamed":
            return f"Renamed a bench: {change.what}"
        case "drawn":
            return "Drew the benches anew"
        case "sent_out":
            return "Sent a player out"


def rekeyed_note(current: Round) -> str:
    """For everybody, once the result is out: that the host keyed the item, and how it was dealt, else ""."""
    if current.dealt is None:
        return ""
    return f"Your host keyed this item anew. As dealt the key was {key_words(current.dealt)}."


def flags_face(current: Round) -> FlagsFace:
    """The flags of a round, for the host alone and without names."""
    flags = tuple(flags_up(current))
    return FlagsFace(
        up=len(flags),
        waiting=sum(not one.settled for one in flags),
        texts=tuple(
            FlagText(text=one.text, settled=one.settled, asked=one.asked)
            for one in flags
            if one.text or one.asked
        ),
    )


def own_flag(player: Player, current: Round | None) -> OwnFlag | None:
    """A player's own flag for a round; None if none is up."""
    known = None if current is None else current.flags.get(player.id)
    if current is None or known is None or not known.up:
        return None
    return OwnFlag(round=current.number, text=known.text)


def own_flags(room: Room, player: Player) -> Iterator[OwnFlag]:
    """All flags that a player has up, round by round."""
    for current in room.rounds:
        flag = own_flag(player, current)
        if flag is not None:
            yield flag
