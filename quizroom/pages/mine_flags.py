"""The request by which a player flags an item in a second look."""

from quizroom.protocol.mine import FlagOfLook, LookFlagged
from quizroom.protocol.mine_codec import read_sent
from quizroom.service.look_flags import LookFlags

NO_READER = (
    "No host would read this flag: the item was dealt for you alone, or its review is not kept any more. "
    "Tell your teacher what looks wrong."
)


def flagged(flags: LookFlags, player: str, body: bytes) -> LookFlagged:
    """Put a flag up or take it back; raises as `LookFlags` does, and `Unreadable`."""
    wish = read_sent(FlagOfLook, body)
    if wish.up:
        flags.put(player, wish.look, wish.text)
    else:
        flags.take_back(player, wish.look)
    return LookFlagged(look=wish.look, up=wish.up)
