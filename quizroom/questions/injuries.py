"""What may be cut through, and what that surely takes away or leaves whole.

A muscle is *lost* for sure if the standard account says so; it is *whole* for sure only if no recorded
reading lets anything of it be cut. Where books differ on what leaves a nerve before a level, neither is said.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cached_property

from quizroom.knowledge.anatomy.lesion import Cut, CutSupply, cut_at, supplies_cut
from quizroom.knowledge.anatomy.movers import movers
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.course import keyed
from quizroom.knowledge.facts import Fact
from quizroom.knowledge.model import Action, Course, Supply
from quizroom.questions.overlap import segments_beside


@dataclass(frozen=True, slots=True, kw_only=True)
class Toll:
    """What an injury costs, as `muscle/part` pairs: surely lost, lost by every reading, surely whole."""

    lost: frozenset[tuple[str, str]]
    lost_by_all: frozenset[tuple[str, str]]
    whole: frozenset[tuple[str, str]]


@dataclass(frozen=True, kw_only=True, eq=False)
class Injuries:
    """The levels of the content, trunks of plexuses and roots, each with its toll by a course's rulings."""

    catalogue: Catalogue
    course: Course

    @cached_property
    def tolls(self) -> Mapping[str, Toll]:
        """By the id of the level, trunk or root."""
        return {injury: self._toll(injury) for injury in self.nerves}

    @cached_property
    def nerves(self) -> Mapping[str, str]:
        """The nerve, trunk or root that is cut, by injury."""
        levels = {level.id: level.nerve for level in self.catalogue.levels.values()}
        above = {one.id: one.id for one in self.catalogue.nerves.values() if one.kind in ("trunk", "root")}
        return levels | above

    def is_lost(self, injury: str, muscle: str, part: str = "") -> bool:
        """Whether the injury surely takes away the part, or all parts of the muscle."""
        return self._all_parts(muscle, part) <= self.tolls[injury].lost

    def is_lost_by_all(self, injury: str, muscle: str, part: str = "") -> bool:
        """The same by every recorded reading."""
        return self._all_parts(muscle, part) <= self.tolls[injury].lost_by_all

    def is_whole(self, injury: str, muscle: str, part: str = "") -> bool:
        """Whether the injury surely leaves the part, or all parts of the muscle, as they were."""
        return self._all_parts(muscle, part) <= self.tolls[injury].whole

    def fails(self, injury: str, action: str) -> bool:
        """Whether a movement is surely lost or severely weakened: no prime mover, or no mover, is left.

        No other reading may have a prime mover that is left.
        """
        acting = self._movers(action)
        standard = [fact for fact in acting if keyed(self.course, fact)]
        primes = [fact for fact in acting if isinstance(fact.row, Action) and fact.row.role == "prime"]
        usual_primes = [fact for fact in primes if fact in standard]
        gone = [fact for fact in acting if self.is_lost(injury, fact.muscle, fact.part)]
        if not usual_primes:
            return bool(standard) and all(fact in gone for fact in acting)
        return all(fact in gone for fact in primes)

    def keeps(self, injury: str, action: str) -> bool:
        """Whether no mover by any reading is touched."""
        acting = self._acting(action)
        return bool(acting) and acting <= self.tolls[injury].whole

    def _movers(self, action: str) -> tuple[Fact, ...]:
        joint, _, movement = action.partition(".")
        return movers(self.catalogue, joint, movement)

    def _acting(self, action: str) -> frozenset[tuple[str, str]]:
        """All parts that move a joint by any reading, remembered: every injury asks for all of them."""
        if action not in self._known_acting:
            parts = (self._all_parts(fact.muscle, fact.part) for fact in self._movers(action))
            self._known_acting[action] = frozenset[tuple[str, str]]().union(*parts)
        return self._known_acting[action]

    def _all_parts(self, muscle: str, part: str) -> frozenset[tuple[str, str]]:
        return frozenset({(muscle, part)}) if part else self._parts[muscle]

    @cached_property
    def _known_acting(self) -> dict[str, frozenset[tuple[str, str]]]:
        return {}

    @cached_property
    def _parts(self) -> Mapping[str, frozenset[tuple[str, str]]]:
        """All parts of each muscle; of one without parts itself."""
        return {
            muscle.id: frozenset((muscle.id, part.id) for part in muscle.parts)
            or frozenset({(muscle.id, "")})
            for muscle in self.catalogue.muscles.values()
        }

    def _toll(self, injury: str) -> Toll:
        level = self.catalogue.levels.get(injury)
        cut = cut_at(self.catalogue, injury) if level else Cut(nerves=frozenset((injury,)))
        doubted = frozenset(self._doubted(injury))
        lost, lost_by_all, whole = set(), set(), set()
        for muscle, part, supplies in supplies_cut(self.catalogue, cut):
            standard = [share for fact, share in supplies if keyed(self.course, fact)]
            shares = [share for _, share in supplies]
            if (muscle, part) in doubted or not standard:
                continue
            if min(standard) == 1:
                lost.add((muscle, part))
            if min(shares) == 1:
                lost_by_all.add((muscle, part))
            if not any(shares) and not self._may_reach(injury, supplies):
                whole.add((muscle, part))
        return Toll(lost=frozenset(lost), lost_by_all=frozenset(lost_by_all), whole=frozenset(whole))

    def _doubted(self, injury: str) -> Iterator[tuple[str, str]]:
        """The parts on which books differ: of a level what leaves before it, above that by their segments."""
        level = self.catalogue.levels.get(injury)
        if level is not None:
            yield from self._named((*level.spares, *level.doubts)) if level.note else ()
            return
        cut = set(self.catalogue.nerves[injury].roots)
        for muscle in self.catalogue.muscles.values():
            if any(not cut.issuperset(difference.segments) for difference in muscle.differ):
                yield from self._parts[muscle.id]

    def _may_reach(self, trunk: str, supplies: tuple[CutSupply, ...]) -> bool:
        """Whether fibers may come through a trunk after all, since books differ by a segment on roots."""
        if trunk in self.catalogue.levels:
            return False
        below = self.catalogue.index.nerves_below.get(trunk, frozenset())
        beside = frozenset[str]().union(*map(segments_beside, self.catalogue.nerves[trunk].roots))
        rows = (fact.row for fact, _ in supplies if fact.value in below)
        return any(isinstance(row, Supply) and beside & {*row.roots, *row.main} for row in rows)

    def _named(self, spares: tuple[str, ...]) -> Iterator[tuple[str, str]]:
        """The parts that spared branches and muscles stand for."""
        below = self.catalogue.index.nerves_below
        branches = {nerve for one in spares for nerve in (one, *below.get(one, ()))}
        for muscle in self.catalogue.muscles.values():
            for part in [one.id for one in muscle.parts] or [""]:
                by_branch = any(row.nerve in branches for row in muscle.nerves if row.part in ("", part))
                if by_branch or muscle.id in spares or f"{muscle.id}/{part}" in spares:
                    yield muscle.id, part
