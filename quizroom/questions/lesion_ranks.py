"""Wrong muscles, movements and injuries beside what a lesion takes away."""

from collections.abc import Iterable, Iterator

from quizroom.knowledge.anatomy import nerve_ancestors
from quizroom.questions.ask import Ask
from quizroom.questions.kindred import kindred_ranks
from quizroom.questions.ranks import Rank
from quizroom.questions.syllabus import Syllabus, usual_values
from quizroom.questions.wrong_movements import action_ranks
from quizroom.questions.wrong_muscles import muscle_ranks

ABOVE_NERVES = ("trunk", "root")
"""What is cut where only some of the fibers of the nerves below pass."""


def lost_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The usual sources, of the region and the next: no adductor of the hip is lost in the palm.

    Of the same nerve only what leaves it before the level is left to be wrong.
    """
    near = frozenset(syllabus.kinship.around(syllabus.catalogue.muscles[ask.muscles[0]].region))
    for source, muscles in muscle_ranks(syllabus, ask):
        yield source, tuple(one for one in muscles if one in near)
    claims = syllabus.tables["nerve"].by_value.get(ask.value, ())
    yield "other_level", tuple(claim.muscle for claim in claims if claim.usual)


def spared_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The usual sources, then what else is lost, by a nerve of the same roots or region as the key's own."""
    yield from muscle_ranks(syllabus, ask)
    lost = tuple(sorted({muscle for muscle, _ in syllabus.injuries.tolls[ask.subject].lost_by_all}))
    muscles, nerves = syllabus.catalogue.muscles, syllabus.catalogue.nerves
    here = muscles[ask.key[0]]
    own = {root for row in here.nerves for root in nerves[row.nerve].roots}
    beside = bool(own & set(nerves[ask.value].roots))
    yield "sibling_nerve", tuple(one for one in lost if beside or muscles[one].region == here.region)
    yield "same_region", lost


def movement_loss_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """The usual sources for a movement with its joint, at joints of the same limb or of the trunk."""
    near = frozenset(syllabus.joints_nearby(ask.key[0].partition(".")[0]))
    for source, actions in action_ranks(syllabus, ask):
        yield source, tuple(one for one in actions if one.partition(".")[0] in near)


def injury_ranks(syllabus: Syllabus, ask: Ask) -> Iterator[Rank]:
    """Look-alike nerves, other levels of the nerve, nerves of the region with siblings first, other siblings,
    those of kindred that lie near, those of the limb or of head and neck.

    No nerve of the loin is thought of for an eye that does not move. Trunks and roots stand only beside a
    trunk or root.
    """
    kinship, nerves = syllabus.kinship, syllabus.catalogue.nerves
    nerve = nerves[ask.value]
    above = nerve.kind in ABOVE_NERVES
    cuts = syllabus.injuries.nerves.items()
    injuries = {one: cut for one, cut in cuts if above or nerves[cut].kind not in ABOVE_NERVES}
    alike = kinship.lookalikes.get(nerve.id, ())
    siblings = {one for parent in nerve.parents for one in kinship.by_nerve_parent[parent]}
    region = syllabus.catalogue.muscles[ask.muscles[0]].region
    reaching = _reaching(syllabus, kinship.by_region[region])
    yield "look_alike", tuple(one for one, cut in injuries.items() if cut in alike)
    yield "other_level", tuple(one for one, cut in injuries.items() if cut == nerve.id)
    yield "sibling_nerve", tuple(one for one, cut in injuries.items() if cut in siblings & reaching)
    yield "sibling_nerve", tuple(one for one, cut in injuries.items() if cut in reaching)
    yield "sibling_nerve", tuple(one for one, cut in injuries.items() if cut in siblings)
    yield (
        "sibling_nerve",
        tuple(one for one, cut in injuries.items() if set(nerves[cut].roots) & set(nerve.roots)),
    )
    near = frozenset(kinship.around(region))
    for source, muscles in kindred_ranks(syllabus, ask.muscles[0]):
        serving = _reaching(syllabus, (one for one in muscles if one in near))
        yield source, tuple(one for one, cut in injuries.items() if cut in serving)
    of_area = _reaching(syllabus, kinship.of_area(region))
    yield "sibling_nerve", tuple(one for one, cut in injuries.items() if cut in of_area)
    beside = _reaching(syllabus, kinship.beside_region.get(region, ()))
    yield "same_region", tuple(one for one, cut in injuries.items() if cut in beside)


def _reaching(syllabus: Syllabus, muscles: Iterable[str]) -> set[str]:
    """The nerves of muscles, with all that these come from."""
    own = usual_values(syllabus, "nerve", muscles)
    return {one for nerve in own for one in (nerve, *nerve_ancestors(syllabus.catalogue, nerve))}
