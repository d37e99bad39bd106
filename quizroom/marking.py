"""Marks: what an answer is worth, what a player has, how the standings stand.

Marks are never stored. They follow from the raw answers and the items, so that striking an
item marks the whole review anew.
"""

from bisect import bisect_right
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import combinations
from types import MappingProxyType

from quizroom.knowledge.terms import normalise
from quizroom.questions.model import Item
from quizroom.questions.typed import Verdict, verdict
from quizroom.room.answers import Said
from quizroom.room.state import Answer, Player, Room, Round

NO_RULINGS: Mapping[str, bool] = MappingProxyType({})
NO_ANSWERS: Mapping[str, Answer] = MappingProxyType({})
ACCEPTED_BY_HOST = "Your host accepts this answer."
REFUSED_BY_HOST = "Your host does not accept this answer."
HALF = 0.5
"""Mark of a term that is right but misspelt, where the course list says so."""


@dataclass(frozen=True, slots=True, kw_only=True)
class RoundMarks:
    """The marks of everybody who answered a round, made from exactly this `item` and these `answers`."""

    item: Item
    answers: Mapping[str, Answer]
    rulings: Mapping[str, bool]
    verdicts: Mapping[str, Verdict]
    """On every text that was typed, as it was typed: judged once, and read by all views."""
    marks: Mapping[str, float]
    said: Mapping[Said, int]
    """How many players gave just this answer: few differ, so views need not look at thousands again."""
    bench_answers: Mapping[str, Answer]
    bench_marks: Mapping[str, float]
    """What each bench's own answer is worth."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Total:
    """Marks of a player over the rounds that count for them."""

    marks: float
    of: int


@dataclass(frozen=True, slots=True, kw_only=True)
class RoomMarks:
    """The marks of a whole room; `totals` leave out the open round, held results and struck items."""

    rounds: tuple[RoundMarks, ...]
    counted: tuple[RoundMarks, ...]
    """Those of `rounds` that the totals are made of."""
    totals: Mapping[str, Total]
    benches: Mapping[str, Total]
    seconds: tuple[RoundMarks | None, ...] = ()
    """What second answers would be worth, round by round; None where there are none. Nothing counts them."""
    order: tuple[float, ...] = ()
    """The marks of everybody in the room, least first; empty while no round counts, when all are level."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """A line of the standings; players with equal marks share a place."""

    place: int
    player: str
    handle: str
    marks: float
    of: int


@dataclass(frozen=True, slots=True, kw_only=True)
class BenchStanding:
    """A line of the standings by bench."""

    place: int
    bench: str
    marks: float
    of: int


def judge(item: Item, text: str, rulings: Mapping[str, bool] = NO_RULINGS) -> Verdict:
    """The verdict on typed words; where the host has ruled on them, that ruling."""
    found = verdict(item, text)
    accepted = rulings.get(normalise(text))
    if accepted is None:
        return found
    if not accepted:
        return replace(found, kind="wrong", because=REFUSED_BY_HOST)
    return Verdict(kind="right", concept=_meant(item, found, text), because=ACCEPTED_BY_HOST)


def mark_of(item: Item, answer: Answer | None, rulings: Mapping[str, bool] = NO_RULINGS) -> float:
    """The mark of an answer, 0 to 1.

    One best answer: 1 or 0, and any of several if the host keyed more. Sets: max(0, (hits - wrong) / N).
    Orderings: max(0, Kendall's tau). Matchings: the share of rows that are right.
    """
    if answer is None:
        return 0.0
    if item.format == "one_best":
        return 1.0 if answer.choice and set(answer.choice) <= set(item.key) else 0.0
    if item.format == "ordering":
        return mark_of_order(item.key, answer.choice)
    if item.format == "matching":
        return sum(rows_right(item, answer)) / len(item.key)
    if item.format == "pick_n":
        hits = len(set(answer.choice) & set(item.key))
        return share_of_set(hits=hits, wrong=len(answer.choice) - hits, size=item.pick)
    return mark_of_words(item, {text: judge(item, text, rulings) for text in answer.typed})


def mark_of_order(right: Sequence[str], given: Sequence[str]) -> float:
    """Kendall's tau between two orders of the same things, but not less than 0.

    Tau is the pairs in the right order less those turned round, over all pairs (Kendall 1938, from memory);
    one pair of neighbours exchanged among four -> 2/3.
    """
    place = {letter: number for number, letter in enumerate(right)}
    pairs = list(combinations((place[letter] for letter in given), 2))
    turned_round = sum(one > other for one, other in pairs)
    return max(0.0, (len(pairs) - 2 * turned_round) / len(pairs))


def rows_right(item: Item, answer: Answer) -> tuple[bool, ...]:
    """For each place of an ordering or row of a matching, whether its letter is the right one."""
    return tuple(given == key for given, key in zip(answer.choice, item.key, strict=True))


def mark_of_words(item: Item, said: Mapping[str, Verdict]) -> float:
    """The mark of judged words. Names of the same thing count once; a doubtful one counts nothing yet."""
    best: dict[str, float] = {}
    wrong: set[str] = set()
    for text, found in said.items():
        worth = worth_of(found)
        if worth > 0:
            best[found.concept] = max(worth, best.get(found.concept, 0.0))
        elif found.kind == "wrong":
            wrong.add(found.concept or normalise(text))
    return share_of_set(hits=sum(best.values()), wrong=len(wrong - best.keys()), size=item.pick)


def worth_of(found: Verdict) -> float:
    """What one typed term is worth."""
    match found.kind:
        case "right":
            return 1.0
        case "half":
            return HALF
        case _:
            return 0.0


def share_of_set(*, hits: float, wrong: int, size: int) -> float:
    """Partial credit of a set of `size`: wrong picks cancel right ones, never below 0.

    Source: the pick-N row of the trade's scoring table; 3 of 3 -> 1, 2 + 1 wrong -> 1/3.
    """
    return max(0.0, (hits - wrong) / size)


def marks_of_room(room: Room, known: RoomMarks | None = None) -> RoomMarks:
    """Mark every round; rounds whose answers are those of `known` are not marked again."""
    old = known.rounds if known is not None else ()
    rounds = tuple(
        _marks_of_round(current, old[index] if index < len(old) else None)
        for index, current in enumerate(room.rounds)
    )
    counted = [
        (current, marks) for current, marks in zip(room.rounds, rounds, strict=True) if counts(current)
    ]
    totals = _totals(room, counted, known)
    return RoomMarks(
        rounds=rounds,
        counted=tuple(marks for _, marks in counted),
        totals=totals,
        benches=_bench_totals(room, counted),
        seconds=_second_marks(room, known),
        order=tuple(sorted(totals[player].marks for player in room.players)) if counted else (),
    )


def _meant(item: Item, found: Verdict, text: str) -> str:
    """What an accepted answer counts as; in a set, words for none of its members count by themselves."""
    if found.concept in {one.concept for one in item.accepted}:
        return found.concept
    return item.accepted[0].concept if item.pick == 1 else f"accepted {normalise(text)}"


def counts(current: Round) -> bool:
    """Whether a round is part of anybody's marks: its result known to all, and its item not struck.

    So a held result cannot be read from marks and standings.
    """
    return current.shown_at is not None and not current.struck


def bench_standings(marks: RoomMarks) -> tuple[BenchStanding, ...]:
    """All benches by marks, then by name; equal marks share a place."""
    ordered = sorted(marks.benches.items(), key=lambda one: (-one[1].marks, one[0].casefold(), one[0]))
    places = {total.marks: place for place, (_, total) in reversed(list(enumerate(ordered, 1)))}
    return tuple(
        BenchStanding(place=places[total.marks], bench=bench, marks=total.marks, of=total.of)
        for bench, total in ordered
    )


def standings(room: Room, marks: RoomMarks) -> tuple[Standing, ...]:
    """All players by marks, then by handle and id, so that the order is total and stable."""
    players = sorted(
        room.players.values(),
        key=lambda player: (-marks.totals[player.id].marks, player.handle.casefold(), player.id),
    )
    rows: list[Standing] = []
    for index, player in enumerate(players):
        total = marks.totals[player.id]
        shares = rows and rows[-1].marks == total.marks
        rows.append(
            Standing(
                place=rows[-1].place if shares else index + 1,
                player=player.id,
                handle=player.handle,
                marks=total.marks,
                of=total.of,
            )
        )
    return tuple(rows)


def place_of(player: str, marks: RoomMarks) -> int:
    """The place of one player in the standings, without putting all of them in order."""
    return 1 + len(marks.order) - bisect_right(marks.order, marks.totals[player].marks)


def _marks_of_round(current: Round, known: RoundMarks | None) -> RoundMarks:
    # The fold shares an unchanged mapping of answers, so identity is enough to know it again.
    if known is not None and _is_of(known, current):
        return known
    verdicts = _verdicts(current, known)
    worth: dict[Said, float] = {}
    times: Counter[Said] = Counter()
    marks: dict[str, float] = {}
    for player, answer in current.answers.items():
        said = (answer.choice, answer.typed)
        if said not in worth:
            worth[said] = _mark(current.item, answer, verdicts)
        marks[player] = worth[said]
        times[said] += 1
    return RoundMarks(
        item=current.item,
        answers=current.answers,
        rulings=current.rulings,
        verdicts=verdicts,
        marks=marks,
        said=times,
        bench_answers=current.bench_answers,
        bench_marks={
            bench: mark_of(current.item, answer, current.rulings)
            for bench, answer in current.bench_answers.items()
        },
    )


def as_second(current: Round) -> Round:
    """The round as if its second answers were all its answers."""
    return replace(
        current, answers=current.second_answers, second_answers=NO_ANSWERS, bench_answers=NO_ANSWERS
    )


def _second_marks(room: Room, known: RoomMarks | None) -> tuple[RoundMarks | None, ...]:
    old = known.seconds if known is not None else ()
    return tuple(
        _marks_of_round(as_second(current), old[index] if index < len(old) else None)
        if current.second_answers
        else None
        for index, current in enumerate(room.rounds)
    )


def _is_of(known: RoundMarks, current: Round) -> bool:
    same = known.item is current.item and known.answers is current.answers
    return same and known.rulings is current.rulings and known.bench_answers is current.bench_answers


def _verdicts(current: Round, known: RoundMarks | None) -> dict[str, Verdict]:
    same = known is not None and known.item is current.item and known.rulings is current.rulings
    before = known.verdicts if known is not None and same else {}
    texts = dict.fromkeys(text for answer in current.answers.values() for text in answer.typed)
    return {text: before.get(text) or judge(current.item, text, current.rulings) for text in texts}


def _mark(item: Item, answer: Answer, verdicts: Mapping[str, Verdict]) -> float:
    if answer.typed:
        return mark_of_words(item, {text: verdicts[text] for text in answer.typed})
    return mark_of(item, answer)


def _totals(
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


def _bench_totals(room: Room, counted: list[tuple[Round, RoundMarks]]) -> dict[str, Total]:
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
