"""What is left of a room that was played by the steadfast."""

from tests.live.reference_fold import Reference
from tests.live.steadfast import SteadfastRoom


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
