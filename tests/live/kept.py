"""Rooms that are played by the steadfast, and what is left of them."""

from collections.abc import Sequence
from contextlib import AbstractContextManager

from tests.live.at_work import at_work
from tests.live.reference_fold import Reference
from tests.live.steadfast import SteadfastRoom


def played(rooms: Sequence[SteadfastRoom]) -> AbstractContextManager[None]:
    """Everybody plays meanwhile; then nobody begins anything new, and what was begun is ended."""

    def end() -> None:
        for room in rooms:
            room.end()

    leading = [room.lead for room in rooms]
    return at_work([*leading, *(player.play for room in rooms for player in room.players)], end)


def assert_kept(room: SteadfastRoom, folded: Reference) -> int:
    """Each acknowledged answer is in the log once and in order, and the marks follow; how many there are."""
    count = 0
    for player in room.players:
        for number, answered in player.answers.items():
            logged = folded.said.get((player.name, number), [])
            # the last one may have been cut off before its acknowledgement, and refused when it was said
            # again
            assert logged in (answered.sent[: answered.done], answered.sent), (player.name, number, answered)
            count += answered.done
    room.look()
    shown = {row["handle"]: (row["marks"], row["of"]) for row in room.desk["roster"]}
    assert shown == folded.marks()
    return count
