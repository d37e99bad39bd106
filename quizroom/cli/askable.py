"""What `quizroom typed` can be asked for, told to whoever named something else."""

import re
from itertools import islice
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterator

    from quizroom.questions.syllabus import Syllabus

_MOST = 3
"""So many ids are offered at most."""


def is_askable(syllabus: "Syllabus", concept: str) -> bool:
    """Whether there is such a concept, and not only a set of words that are mixed up."""
    return concept in syllabus.vocabulary().of_concept and concept not in syllabus.catalogue.lookalikes


def not_askable(syllabus: "Syllabus", word: str) -> str:
    """Why a word cannot be asked for, and what comes near that can be."""
    from quizroom.knowledge.suggest import suggest  # noqa: PLC0415 - not before `serve` patches

    known = (one for one in syllabus.vocabulary().of_concept if is_askable(syllabus, one))
    meant = [f'"{one}"' for one in islice(dict.fromkeys(_meant(syllabus, word)), _MOST)]
    near = f"did you mean {' or '.join(meant)}?" if meant else suggest(word, known)
    return (
        f'Nothing that can be asked for has the id "{word}": {near}\n'
        "Asked for can be a muscle, head, bone, landmark, joint, movement, nerve or artery of the content, "
        "by its id, such as sartorius, hip_bone.iliac_crest or femoral_nerve."
    )


def _meant(syllabus: "Syllabus", word: str) -> "Iterator[str]":
    """Ids of what the word is a term for, else those that it is a part of."""
    from quizroom.questions.typed import form_of  # noqa: PLC0415 - not before `serve` patches

    vocabulary, plain = syllabus.vocabulary(), re.sub(r"[._/]", " ", word)
    terms = vocabulary.terms.get(form_of(plain), ())
    named = [term.concept for term in terms if is_askable(syllabus, term.concept)]
    parts = set(plain.casefold().split())
    if named or not parts:
        yield from named
        return
    for concept in vocabulary.of_concept:
        if parts <= set(re.split(r"[._/]", concept)) and is_askable(syllabus, concept):
            yield concept
