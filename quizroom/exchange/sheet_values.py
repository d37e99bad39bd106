"""From the words of a sheet to the ids of the content."""

from collections.abc import Iterable, Mapping

from quizroom.exchange.sheet import SheetRow
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.model import Artery, Nerve
from quizroom.knowledge.suggest import suggest


class NoSuchValue(Exception):
    """A value names nothing in the vocabulary; the text says what is near."""


def value_id_of(row: SheetRow, catalogue: Catalogue) -> str:
    """The id that a row means: its `value_id`, or the one whose name is its `value`.

    Raises:
        NoSuchValue: neither is known.
    """
    match row.fact_type:
        case "origin" | "insertion":
            return _site(row, catalogue)
        case "nerve":
            return _looked_up(row, _names(catalogue.nerves.values()))
        case "root":
            return _root_nerve(row, catalogue)
        case "artery":
            return _looked_up(row, _names(catalogue.arteries.values()))
        case "region":
            return _looked_up(row, {one.id: (one.name,) for one in catalogue.regions.values()})
        case "compartment":
            return _looked_up(row, {one.id: (one.name,) for one in catalogue.compartments.values()})
        case "action":
            return _action(row, catalogue)
        case _:
            return row.value_id


def _site(row: SheetRow, catalogue: Catalogue) -> str:
    words = {one.id: (one.label, one.name, *one.synonyms) for one in catalogue.landmarks.values()}
    # The sheet writes "landmark, finer words"; without an id the landmark is what stands before the comma.
    return _looked_up(row, words, row.value.partition(",")[0])


def _root_nerve(row: SheetRow, catalogue: Catalogue) -> str:
    if row.value_id in catalogue.nerves:
        return row.value_id
    supplies = {supply.nerve for supply in catalogue.muscles[row.muscle].nerves if supply.part == row.part}
    if len(supplies) == 1:
        return supplies.pop()
    raise NoSuchValue("a root needs the id of its nerve in value_id")


def _action(row: SheetRow, catalogue: Catalogue) -> str:
    if "." in row.value_id:
        joint, _, movement = row.value_id.partition(".")
    else:
        joint, _, movement = (text.strip() for text in row.value.partition(":"))
    joints = {one.id: (one.name, *one.synonyms) for one in catalogue.joints.values()}
    movements = {one.id: (one.name, *one.synonyms) for one in catalogue.movements.values()}
    return f"{_found(joint, joints)}.{_found(movement, movements)}"


def _looked_up(row: SheetRow, words: Mapping[str, tuple[str, ...]], value: str = "") -> str:
    return _found(row.value_id or value or row.value, words)


def _found(text: str, words: Mapping[str, tuple[str, ...]]) -> str:
    if text in words:
        return text
    named = [key for key, names in words.items() if text.casefold() in (name.casefold() for name in names)]
    if len(named) == 1:
        return named[0]
    if named:
        raise NoSuchValue(f'"{text}" may mean {" or ".join(sorted(named))}: give the value_id')
    every = (*words, *(name for names in words.values() for name in names))
    raise NoSuchValue(f'"{text}" is not in the vocabulary: {suggest(text, every)}')


def _names(entries: Iterable[Nerve | Artery]) -> Mapping[str, tuple[str, ...]]:
    return {one.id: (one.name, *one.synonyms) for one in entries}
