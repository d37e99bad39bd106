"""What a content rule yields, and where an entry stands in the content folder."""

from dataclasses import dataclass

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import Fact
from quizroom.knowledge.model import Muscle

TABLE_FILES = {
    "sources": "sources.toml",
    "regions": "regions.toml",
    "compartments": "compartments.toml",
    "bones": "bones.toml",
    "landmarks": "landmarks/",
    "joints": "joints.toml",
    "movements": "movements.toml",
    "nerves": "nerves.toml",
    "levels": "levels.toml",
    "arteries": "arteries.toml",
    "lookalikes": "lookalikes.toml",
    "exceptions": "exceptions.toml",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Flaw:
    """One breach of a rule.

    `subject` is what a listed exception would name, a fact id or an id; `unknown` is the id that
    was not found, if that is the breach.
    """

    file: str
    key: str
    subject: str
    message: str
    remedy: str
    unknown: str = ""


def file_of(catalogue: Catalogue, table: str, entry: str) -> str:
    """The file in which an entry stands, relative to the content folder."""
    known = catalogue.files.get((table, entry))
    if known is not None:
        return known
    if table == "muscles":
        return f"muscles/{catalogue.muscles[entry].region}/{entry}.toml"
    return TABLE_FILES.get(table, f"{table}/{entry}.toml")


def at_fact(catalogue: Catalogue, fact: Fact, field: str, message: str, remedy: str) -> Flaw:
    """A flaw of one row of a muscle; `field` is the key within the row ("" for the row itself)."""
    key = f"{fact.key}.{field}" if field else fact.key
    file = file_of(catalogue, "muscles", fact.muscle)
    return Flaw(file=file, key=key, subject=fact.id, message=message, remedy=remedy)


def at_muscle(catalogue: Catalogue, muscle: Muscle, key: str, message: str, remedy: str) -> Flaw:
    """A flaw of a muscle's file that concerns no single row."""
    file = file_of(catalogue, "muscles", muscle.id)
    return Flaw(file=file, key=key, subject=muscle.id, message=message, remedy=remedy)


def at_entry(
    catalogue: Catalogue, table: str, entry: str, message: str, remedy: str, *, field: str = ""
) -> Flaw:
    """A flaw of an entry of a vocabulary file or of a course; `field` is the key within the entry."""
    key = field if table == "courses" else ".".join(filter(None, (entry, field)))
    file = file_of(catalogue, table, entry)
    return Flaw(file=file, key=key, subject=entry, message=message, remedy=remedy)
