"""What players and benches have, over the rounds that count."""

from collections.abc import Mapping

from quizroom.marking.model import RoomMarks, RoundMarks, Total
from quizroom.room.state import Player, Room, Round


def totals_of(
    room: Room, counted: list[tuple[Round, RoundMarks]], known: RoomMarks | None
) -> Mapping[str, Total]:
    """Everybody's totals. As long as the same rounds count, those who were there keep theirs."""
    before: Mapping[str, Total] = {}
    if known is not None and len(known.counted) == len(counted):
        same = all(old is marks for old, (_, marks) in zip(known.counted, counted, strict=True))
        before = known.totals if same else {}
    fresh = room.players.keys() - before.keys() if before else room.players.keys()
    if before and not fresh and len(before) == len(room.players):
        return before
    now = {**before, **{player: _total(room.players[player], counted) for player in fresh}}
    return now if len(now) == len(room.players) else {player: now[player] for player in room.players}


def _total(player: Player, counted: list[tuple[Round, RoundMarks]]) -> Total:
    mine = [marks for current, marks in counted if current.number >= player.from_round]
    return Total(marks=round(sum(each.marks.get(player.id, 0.0) for each in mine), 4), of=len(mine))


def bench_totals(room: Room, counted: list[tuple[Round, RoundMarks]]) -> dict[str, Total]:
    """What each bench has: its own answers where benches hand in, else the mean of its members' marks.

    The mean makes benches of several sizes comparable (common practice, no source). A round counts for a
    bench if somebody who now sits at it was in the room then.
    """
    members: dict[str, list[Player]] = {bench: [] for bench in room.benches.values()}
    for player, bench in room.benches.items():
        members[bench].append(room.players[player])
    return {bench: _bench_total(room, bench, mates, counted) for bench, mates in members.items()}


def _bench_total(
    room: Room, bench: str, mates: list[Player], counted: list[tuple[Round, RoundMarks]]
) -> Total:
    rules = room.plan.benches
    together = rules is not None and rules.answers
    total, of = 0.0, 0
    for current, marks in counted:
        there = [mate.id for mate in mates if mate.from_round <= current.number]
        if there:
            of += 1
            alone = sum(marks.marks.get(mate, 0.0) for mate in there) / len(there)
            total += marks.bench_marks.get(bench, 0.0) if together else alone
    return Total(marks=round(total, 4), of=of)
