"""Rules: every statement says where it comes from."""

from collections.abc import Iterator

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks.flaw import Flaw, at_entry, at_muscle, file_of
from quizroom.knowledge.facts import rows_of
from quizroom.knowledge.model import Muscle
from quizroom.knowledge.suggest import suggest


def every_fact_has_a_source(catalogue: Catalogue) -> Iterator[Flaw]:
    """Each row, note and difference, and the muscle itself, names at least one source."""
    for muscle in catalogue.muscles.values():
        for key, sources in _cited(muscle):
            if not sources:
                remedy = 'add `sources`; "common_practice" if it is taught everywhere'
                yield at_muscle(catalogue, muscle, key, "no source is named", remedy)
    for lookalike in catalogue.lookalikes.values():
        if not lookalike.sources:
            remedy = "add `sources` to the look-alike set"
            yield at_entry(
                catalogue, "lookalikes", lookalike.id, "no source is named", remedy, field="sources"
            )


def every_source_is_known(catalogue: Catalogue) -> Iterator[Flaw]:
    """Each source named stands in sources.toml."""
    for file, key, sources in _citations(catalogue):
        for source in sources:
            if source not in catalogue.sources:
                message = f'the source "{source}" is not in sources.toml'
                remedy = suggest(source, catalogue.sources)
                yield Flaw(file=file, key=key, subject=source, message=message, remedy=remedy)


def every_source_is_used(catalogue: Catalogue) -> Iterator[Flaw]:
    """A source that nothing cites is no source."""
    used = {source for _, _, sources in _citations(catalogue) for source in sources}
    for source in catalogue.sources:
        if source not in used:
            yield at_entry(
                catalogue, "sources", source, "no fact cites it", "cite it where it applies, or remove it"
            )


def _cited(muscle: Muscle) -> Iterator[tuple[str, tuple[str, ...]]]:
    yield "sources", muscle.sources
    for _, key, row in rows_of(muscle):
        yield f"{key}.sources", row.sources
    for position, note in enumerate(muscle.notes):
        yield f"notes[{position}].sources", note.sources
    for position, difference in enumerate(muscle.differ):
        yield f"differ[{position}].sources", difference.sources


def _citations(catalogue: Catalogue) -> Iterator[tuple[str, str, tuple[str, ...]]]:
    for muscle in catalogue.muscles.values():
        file = file_of(catalogue, "muscles", muscle.id)
        yield from ((file, key, sources) for key, sources in _cited(muscle))
    for lookalike in catalogue.lookalikes.values():
        yield file_of(catalogue, "lookalikes", lookalike.id), f"{lookalike.id}.sources", lookalike.sources
    for level in catalogue.levels.values():
        yield file_of(catalogue, "levels", level.id), f"{level.id}.sources", level.sources
    for position, exempt in enumerate(catalogue.exempt):
        yield "exceptions.toml", f"exempt[{position}].sources", exempt.sources
