"""Wrong nerves and arteries: look-alikes, name traps, siblings, those of the same region."""

from collections.abc import Collection, Iterable, Iterator, Mapping
from functools import lru_cache

from quizroom.knowledge.model import Artery, Muscle
from quizroom.questions.ask import Ask
from quizroom.questions.cues import clangs
from quizroom.questions.kindred import kindred_values
from quizroom.questions.kinship import HEAD_AND_NECK, LIMB_OF
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.traits import is_asked_nerve


def nerve_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for a nerve: of siblings those of the region first.

    Nerves that supply no muscle come only as look-alikes.
    """
    kinship = syllabus.kinship
    key = syllabus.catalogue.nerves[ask.key[0]]
    muscle = syllabus.catalogue.muscles[ask.muscles[0]]
    motor = _motor(syllabus)
    roots = frozenset(key.roots)
    kin = tuple(one for one in motor if not roots.isdisjoint(syllabus.catalogue.nerves[one].roots))
    alike = (one for one in kinship.lookalikes.get(key.id, ()) if _may_be_thought_of(syllabus, one, muscle))
    yield "look_alike", (*alike, *_name_traps(syllabus, ask, kin))
    yield "sibling_nerve", tuple(_of_muscles(syllabus, ask, kinship.by_region.get(muscle.region, ()), motor))
    siblings = [one for parent in key.parents for one in kinship.by_nerve_parent[parent]]
    yield "sibling_nerve", tuple(one for one in siblings if one in motor)
    yield "sibling_nerve", kin
    yield (
        "same_region",
        tuple(_of_muscles(syllabus, ask, kinship.beside_region.get(muscle.region, ()), motor)),
    )


def artery_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The ranked sources for an artery.

    An artery of a neighbour in the same compartment may well send a twig that no book lists, so
    it is never called wrong.
    """
    kinship = syllabus.kinship
    key = syllabus.catalogue.arteries[ask.key[0]]
    muscle = syllabus.catalogue.muscles[ask.muscles[0]]
    risky = _risky(syllabus, muscle.compartment)
    safe = syllabus.tables["artery"].by_value.keys() - risky
    lookalikes = kinship.lookalikes.get(key.id, ())
    yield "look_alike", tuple(one for one in lookalikes if one not in risky)
    yield "sibling_artery", tuple(one for one in kinship.by_artery_parent.get(key.parent, ()) if one in safe)
    yield "sibling_artery", tuple(one for one in _cousins(syllabus, key) if one in safe)
    for source, arteries in kindred_values(syllabus, "artery", muscle.id):
        yield source, tuple(one for one in arteries if one in safe)
    yield "same_region", tuple(_of_muscles(syllabus, ask, kinship.by_region.get(muscle.region, ()), safe))
    yield "same_region", tuple(_of_muscles(syllabus, ask, kinship.beside_region.get(muscle.region, ()), safe))


def _may_be_thought_of(syllabus: Syllabus, nerve: str, muscle: Muscle) -> bool:
    """Whether a look-alike nerve serves more than limbs, if the muscle is of head or neck.

    No branch in the palm is thought of for the larynx; the subcostal nerve is for a subscapular one.
    """
    if muscle.region not in HEAD_AND_NECK:
        return True
    reached = syllabus.tables["nerve"].by_value.get(nerve, ())
    regions = {syllabus.catalogue.muscles[claim.muscle].region for claim in reached}
    return not regions or not regions <= LIMB_OF.keys()


@lru_cache(maxsize=8)
def _motor(syllabus: Syllabus) -> Mapping[str, None]:
    """The nerves that supply muscles and may be asked for, in content order."""
    nerves = syllabus.tables["nerve"].by_value
    return dict.fromkeys(nerve for nerve in nerves if is_asked_nerve(syllabus.catalogue, nerve))


@lru_cache(maxsize=512)
def _risky(syllabus: Syllabus, compartment: str) -> frozenset[str]:
    """The arteries of the muscles of a compartment, and all before and behind these."""
    table = syllabus.tables["artery"]
    mates = syllabus.kinship.by_compartment.get(compartment, ())
    fed = {claim.value for mate in mates for claim in table.by_muscle.get(mate, ())}
    return frozenset[str]().union(*map(table.overlap, fed))


def _cousins(syllabus: Syllabus, artery: Artery) -> Iterator[str]:
    """Branches of the siblings of the stem of an artery, and of its stem's stem."""
    branches = syllabus.kinship.by_artery_parent
    stem = syllabus.catalogue.arteries.get(artery.parent)
    for other in branches.get(stem.parent, ()) if stem else ():
        yield from (other, *branches.get(other, ()))


def _name_traps(syllabus: Syllabus, ask: Ask, nerves: Iterable[str]) -> Iterator[str]:
    """Nerves that the muscle's own name suggests: the ulnar nerve for extensor carpi ulnaris."""
    stem = syllabus.stems(ask.stem)
    yield from (one for one in nerves if clangs(stem, syllabus.stems(syllabus.words.text_of(one))))


def _of_muscles(syllabus: Syllabus, ask: Ask, muscles: Iterable[str], kept: Collection[str]) -> Iterator[str]:
    claims = syllabus.tables[ask.relation].by_muscle
    for muscle in muscles:
        yield from (claim.value for claim in claims.get(muscle, ()) if claim.usual and claim.value in kept)
