"""Ids that an entry refers to, held against the table in which they should stand."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks.flaw import Flaw, at_entry, at_fact, at_muscle
from quizroom.knowledge.facts import Fact
from quizroom.knowledge.model import Muscle
from quizroom.knowledge.suggest import suggest

Known = Mapping[str, object]


def unknown_at_fact(catalogue: Catalogue, fact: Fact, field: str, word: str, known: Known) -> Iterator[Flaw]:
    """A flaw if a row's id is not known."""
    if word not in known:
        message = f'the {field} "{word}" is not known'
        yield replace(at_fact(catalogue, fact, field, message, suggest(word, known)), unknown=word)


def unknown_in_muscle(
    catalogue: Catalogue, muscle: Muscle, key: str, word: str, known: Known
) -> Iterator[Flaw]:
    """A flaw if an id in the head of a muscle's file is not known."""
    if word not in known:
        message = f'"{word}" is not known'
        yield replace(at_muscle(catalogue, muscle, key, message, suggest(word, known)), unknown=word)


def unknown_in_entries(
    catalogue: Catalogue,
    table: str,
    field: str,
    references: Iterable[tuple[str, Iterable[str]]],
    known: Known,
) -> Iterator[Flaw]:
    """A flaw for each id that entries of a table name in a field and that is not known."""
    for entry, words in references:
        for word in dict.fromkeys(words):
            if word not in known:
                message, remedy = f'"{word}" is not known', suggest(word, known)
                yield replace(at_entry(catalogue, table, entry, message, remedy, field=field), unknown=word)
