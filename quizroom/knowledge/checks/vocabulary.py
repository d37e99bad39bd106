"""Rules: words and ids mean one thing each."""

from collections.abc import Iterator

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks.flaw import Flaw, at_entry, file_of
from quizroom.knowledge.facts import slug
from quizroom.knowledge.lexicon import Term, lexicon
from quizroom.knowledge.suggest import suggest

_TABLE_OF = {
    "muscle": "muscles",
    "bone": "bones",
    "landmark": "landmarks",
    "joint": "joints",
    "movement": "movements",
    "nerve": "nerves",
    "artery": "arteries",
}


def no_exact_name_means_two_things(catalogue: Catalogue) -> Iterator[Flaw]:
    """A name, synonym or abbreviation that is accepted alone denotes one concept only.

    A landmark may share a word with its own bone: the pisiform is both.
    """
    for form, terms in lexicon(catalogue).items():
        exact = [term for term in terms if term.exact]
        for other in exact[1:]:
            if not _one_thing(catalogue, exact[0], other):
                message = f'"{other.text}" also means "{exact[0].concept}" (as "{form}")'
                remedy = "drop the word from one of them, or make it exact = false where it is a muscle's"
                yield at_entry(catalogue, _TABLE_OF[other.kind], other.concept.split("/")[0], message, remedy)


def every_id_means_one_thing(catalogue: Catalogue) -> Iterator[Flaw]:
    """No two tables use the same id: answers are stored by id alone."""
    seen: dict[str, str] = {}
    for table in _TABLE_OF.values():
        for entry in getattr(catalogue, table):
            if entry in seen:
                message = f'"{entry}" is also an id of {seen[entry]}'
                yield at_entry(catalogue, table, entry, message, "rename the newer of the two")
            seen.setdefault(entry, table)


def ids_are_never_reused(catalogue: Catalogue) -> Iterator[Flaw]:
    """An id of retired.toml is not in use again: it may stand in stored answers."""
    for table in _TABLE_OF.values():
        for entry in catalogue.retired.get(table, ()):
            if entry in getattr(catalogue, table):
                yield at_entry(catalogue, table, entry, "the id is retired", "choose a new id")


def retired_tables_exist(catalogue: Catalogue) -> Iterator[Flaw]:
    """The headings of retired.toml are tables whose ids may stand in stored answers."""
    tables = dict.fromkeys(_TABLE_OF.values())
    for table in catalogue.retired:
        if table not in tables:
            message, remedy = f'"{table}" is no such table', suggest(table, tables)
            yield Flaw(file="retired.toml", key=table, subject=table, message=message, remedy=remedy)


def antagonism_is_symmetric(catalogue: Catalogue) -> Iterator[Flaw]:
    """A movement is the antagonist of its antagonist, and a joint that allows one allows the other."""
    for movement in catalogue.movements.values():
        opposite = catalogue.movements.get(movement.antagonist)
        if opposite is None or opposite.antagonist != movement.id or opposite is movement:
            message = f'"{movement.antagonist}" does not name it back'
            yield at_entry(
                catalogue, "movements", movement.id, message, "mend `antagonist`", field="antagonist"
            )
    for joint in catalogue.joints.values():
        for name in joint.movements:
            opposite = catalogue.movements.get(name)
            if opposite and opposite.antagonist not in joint.movements:
                message = f'it allows "{name}" but not "{opposite.antagonist}"'
                yield at_entry(catalogue, "joints", joint.id, message, "add the opposite", field="movements")


def landmarks_lie_on_bones(catalogue: Catalogue) -> Iterator[Flaw]:
    """A landmark of bone names its bones, that of its table among them; none lies within itself."""
    for landmark in catalogue.landmarks.values():
        table = landmark.id.partition(".")[0]
        wanted = {table} & catalogue.bones.keys()
        if landmark.tissue == "bone" and (not landmark.bones or not wanted <= set(landmark.bones)):
            remedy = 'name the bones it lies on; soft tissue has tissue = "soft"'
            yield at_entry(catalogue, "landmarks", landmark.id, "its bones do not fit", remedy, field="bones")
        if landmark.id in catalogue.index.wholes[landmark.id]:
            message = "it lies within itself"
            yield at_entry(catalogue, "landmarks", landmark.id, message, "mend `within`", field="within")


def no_orphan_landmark(catalogue: Catalogue) -> Iterator[Flaw]:
    """A landmark is used by a muscle or a look-alike set, or lies near one that is.

    Near means on the same bone or on one that it forms a joint with: neighbours make good options.
    """
    used = {fact.value for fact in catalogue.index.facts.values() if fact.kind in ("origin", "insertion")}
    used |= {member for one in catalogue.lookalikes.values() for member in one.members}
    near = {bone for site in used & catalogue.landmarks.keys() for bone in catalogue.landmarks[site].bones}
    near |= {bone for joint in catalogue.joints.values() if near & set(joint.bones) for bone in joint.bones}
    for landmark in catalogue.landmarks.values():
        if landmark.id not in used and not near & set(landmark.bones):
            remedy = "let a muscle or a look-alike set use it, or remove it"
            yield at_entry(catalogue, "landmarks", landmark.id, "nothing near it is used", remedy)


def file_name_is_the_id(catalogue: Catalogue) -> Iterator[Flaw]:
    """A muscle's file is called by its full English name."""
    for muscle in catalogue.muscles.values():
        if slug(muscle.name) != muscle.id:
            file = file_of(catalogue, "muscles", muscle.id)
            message = f'the name is "{muscle.name}", the file "{muscle.id}"'
            remedy = f"rename the file to {slug(muscle.name)}.toml, or mend the name"
            yield Flaw(file=file, key="name", subject=muscle.id, message=message, remedy=remedy)


def region_folder_matches(catalogue: Catalogue) -> Iterator[Flaw]:
    """A muscle's file lies in the folder of its region."""
    for muscle in catalogue.muscles.values():
        file = file_of(catalogue, "muscles", muscle.id)
        folder = file.split("/")[-2]
        if folder != muscle.region:
            message = f'the region is "{muscle.region}", the folder "{folder}"'
            remedy = "move the file or mend `region`"
            yield Flaw(file=file, key="region", subject=muscle.id, message=message, remedy=remedy)


def _one_thing(catalogue: Catalogue, one: Term, other: Term) -> bool:
    if one.concept == other.concept:
        return True
    if {one.kind, other.kind} != {"bone", "landmark"}:
        return False
    bone, landmark = (one, other) if one.kind == "bone" else (other, one)
    return bone.concept in catalogue.landmarks[landmark.concept].bones
