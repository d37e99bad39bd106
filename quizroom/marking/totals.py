"""What players and benches have, over the rounds that count."""

from collections.abc import Iterator, Mapping

from quizroom.marking.model import RoomMarks, RoundMarks, Total
from quizroom.room.state import Player, Room, Round


class Totals(Mapping[str, Total]):
    """Everybody's totals, each added up when it is first asked for.

    A class comes in one by one, and each of them asks for no total but the own.
    """

    __slots__ = ("_counted", "_known", "_players")

    def __init__(
        self,
        players: Mapping[str, Player],
        counted: list[tuple[Round, RoundMarks]],
        known: dict[str, Total],
    ) -> None:
        """`known` holds what was added up over the same rounds before; it is added to."""
        self._players, self._counted, self._known = players, counted, known

    def __getitem__(self, player: str) -> Total:
        seated = self._players[player]
        total = self._known.get(player)
        if total is None:
            total = self._known[player] = _total(seated, self._counted)
        return total

    def __len__(self) -> int:
        return len(self._players)

    def __iter__(self) -> Iterator[str]:
        return iter(self._players)

    def followed(self, players: Mapping[str, Player]) -> "Totals":
        """Those of the players who are there now, as long as the same rounds count."""
        return Totals(players, self._counted, self._known)


def totals_of(
    room: Room, counted: list[tuple[Round, RoundMarks]], known: RoomMarks | None
) -> Mapping[str, Total]:
    """Everybody's totals. As long as the same rounds count, those who were there keep theirs."""
    if known is not None and isinstance(known.totals, Totals) and _are_the_same(known.counted, counted):
        return known.totals.followed(room.players)
    return Totals(room.players, counted, {})


def _are_the_same(known: tuple[RoundMarks, ...], counted: list[tuple[Round, RoundMarks]]) -> bool:
    return len(known) == len(counted) and all(
        old is marks for old, (_, marks) in zip(known, counted, strict=True)
    )


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
