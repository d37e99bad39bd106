"""The full record of a muscle, composed from the catalogue as display text."""

from collections.abc import Iterator

from quizroom.knowledge.anatomy import artery_path, joints_crossed, nerve_path, parts_crossing
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.course import standard_term
from quizroom.knowledge.facts import Row, row_value, rows_of
from quizroom.knowledge.model import Action, Attachment, Blood, LookAlike, Muscle, Supply
from quizroom.knowledge.record import (
    ActionLine,
    ArteryPath,
    DifferLine,
    Head,
    JointRow,
    LookAlikeLine,
    NameLine,
    NervePath,
    NoteLine,
    Record,
    Site,
    SourceLine,
)
from quizroom.knowledge.segments import in_order
from quizroom.knowledge.wording import listed, part_name

ANATOMY_VARIES = (
    "Anatomy varies. This record follows the sources named below and marks what they contest; "
    "where your course list rules otherwise, your course counts."
)
NOT_FOR_PRACTICE = (
    "For teaching and self-study; not for diagnosis, treatment, surgery or injection sites, "
    "which belong to licensed practice."
)
"""Shown whenever a note touches on the clinic."""

_LOOK_ALIKES_SHOWN = 5
"""The muscle's own sets come first; a record that lists every word it touches is not read."""

_BONES_SHOWN = 2
"""Soft tissue that spans more bones is placed by its label alone."""


def record_of(catalogue: Catalogue, muscle_id: str) -> Record:
    """Everything known of the muscle, proximal to distal. Raises KeyError for an unknown muscle."""
    muscle = catalogue.muscles[muscle_id]
    return Record(
        muscle=muscle.id,
        name=muscle.name,
        latin=muscle.latin,
        meaning=muscle.meaning,
        region=catalogue.regions[muscle.region].name,
        compartment=catalogue.compartments[muscle.compartment].name,
        layer=muscle.layer,
        names=tuple(NameLine(term=name.term, kind=name.kind) for name in muscle.names),
        heads=tuple(_heads(catalogue, muscle)),
        joints=tuple(_joint_rows(catalogue, muscle)),
        nerves=tuple(_nerve_path(catalogue, muscle, row) for row in sorted(muscle.nerves, key=_rank)),
        arteries=tuple(_artery_path(catalogue, muscle, row) for row in sorted(muscle.arteries, key=_rank)),
        lookalikes=tuple(_look_alike_lines(catalogue, muscle)),
        differ=tuple(DifferLine(about=d.about, text=d.text, sources=d.sources) for d in muscle.differ),
        notes=tuple(NoteLine(text=n.text, kind=n.kind, sources=n.sources) for n in muscle.notes),
        cautions=_cautions(muscle),
        sources=tuple(_source_lines(catalogue, muscle)),
    )


def _rank(row: Row) -> int:
    """Core rows come first, then variants, then what few say."""
    return ("core", "variant", "minority").index(row.status)


def _heads(catalogue: Catalogue, muscle: Muscle) -> Iterator[Head]:
    """The parts with their own attachments, then those that the parts share or the whole muscle has."""
    for part in [*(part.id for part in muscle.parts), ""]:
        origins = _sites(catalogue, muscle.origins, part)
        insertions = _sites(catalogue, muscle.insertions, part)
        if origins or insertions:
            yield Head(name=part_name(muscle, part), origins=origins, insertions=insertions)


def _sites(catalogue: Catalogue, rows: tuple[Attachment, ...], part: str) -> tuple[Site, ...]:
    own = [row for row in rows if row.part == part]
    own.sort(key=lambda row: (_order(catalogue, row), _rank(row)))
    return tuple(_site(catalogue, row) for row in own)


def _order(catalogue: Catalogue, row: Attachment) -> int:
    bones = catalogue.landmarks[row.site].bones
    return min((catalogue.bones[bone].order for bone in bones), default=0)


def _site(catalogue: Catalogue, row: Attachment) -> Site:
    landmark = catalogue.landmarks[row.site]
    bones = [catalogue.bones[bone].name for bone in landmark.bones]
    return Site(
        landmark=landmark.name,
        bone=listed(bones) if len(bones) <= _BONES_SHOWN else "",
        label=landmark.label,
        detail=row.detail,
        tissue=landmark.tissue,
        status=row.status,
        sources=row.sources,
    )


def _joint_rows(catalogue: Catalogue, muscle: Muscle) -> Iterator[JointRow]:
    """The joints crossed, and those acted on from afar, each with its actions."""
    acted_on = {action.joint for action in muscle.actions}
    joints = {*joints_crossed(catalogue, muscle.id), *acted_on}
    for joint in sorted(joints, key=lambda one: (catalogue.joints[one].order, one)):
        parts = parts_crossing(catalogue, muscle.id, joint)
        actions = sorted((row for row in muscle.actions if row.joint == joint), key=_rank)
        yield JointRow(
            joint=catalogue.joints[joint].name,
            parts=() if len(parts) == len(muscle.parts) else tuple(part_name(muscle, one) for one in parts),
            actions=tuple(_action_line(catalogue, muscle, row) for row in actions),
        )


def _action_line(catalogue: Catalogue, muscle: Muscle, row: Action) -> ActionLine:
    movement = catalogue.movements[row.movement]
    return ActionLine(
        movement=movement.name,
        verb=movement.verb,
        role=row.role,
        part=part_name(muscle, row.part),
        condition=row.condition,
        status=row.status,
        sources=row.sources,
    )


def _nerve_path(catalogue: Catalogue, muscle: Muscle, row: Supply) -> NervePath:
    return NervePath(
        nerve=catalogue.nerves[row.nerve].name,
        path=tuple(step.name for step in nerve_path(catalogue, row.nerve, row.roots)),
        roots=in_order(row.roots),
        main=in_order(row.main),
        part=part_name(muscle, row.part),
        branch=row.branch,
        status=row.status,
        sources=row.sources,
    )


def _artery_path(catalogue: Catalogue, muscle: Muscle, row: Blood) -> ArteryPath:
    return ArteryPath(
        artery=catalogue.arteries[row.artery].name,
        path=tuple(catalogue.arteries[one].name for one in artery_path(catalogue, row.artery)),
        part=part_name(muscle, row.part),
        branch=row.branch,
        status=row.status,
        sources=row.sources,
    )


def look_alikes_of(catalogue: Catalogue, muscle: Muscle) -> tuple[LookAlike, ...]:
    """Sets that hold the muscle, then those that hold one of its core landmarks, nerves or arteries."""
    words = {row_value(row) for _, _, row in rows_of(muscle) if row.status == "core"}
    sets = catalogue.lookalikes.values()
    own = (one for one in sets if muscle.id in one.members)
    others = (one for one in sets if muscle.id not in one.members)
    return (*own, *(one for one in others if not words.isdisjoint(one.members)))


def _look_alike_lines(catalogue: Catalogue, muscle: Muscle) -> Iterator[LookAlikeLine]:
    for one in look_alikes_of(catalogue, muscle)[:_LOOK_ALIKES_SHOWN]:
        terms = (standard_term(catalogue, member) for member in one.members)
        yield LookAlikeLine(terms=(*terms, *one.also), tell=one.tell)


def _cautions(muscle: Muscle) -> tuple[str, ...]:
    clinical = any(note.kind == "clinical" for note in muscle.notes)
    return (ANATOMY_VARIES, NOT_FOR_PRACTICE) if clinical else (ANATOMY_VARIES,)


def _source_lines(catalogue: Catalogue, muscle: Muscle) -> Iterator[SourceLine]:
    cited = set(muscle.sources).union(
        *(row.sources for _, _, row in rows_of(muscle)),
        *(note.sources for note in muscle.notes),
        *(difference.sources for difference in muscle.differ),
    )
    for source in catalogue.sources.values():
        if source.id in cited:
            yield SourceLine(id=source.id, title=source.title, access=source.access)
