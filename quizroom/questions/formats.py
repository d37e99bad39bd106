"""The formats in which an ask can really be put: no stem too long, no question that holds its answer."""

from dataclasses import replace

from quizroom.questions.ask import Ask
from quizroom.questions.model import TYPED_FORMATS, Format
from quizroom.questions.near import accepted_terms
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.typed import form_of

TYPED_ONE_IN = 3
"""Of so many rounds one is typed, where that is wanted and enough can be asked so: a practical is typed."""
LONGEST_STEM_WORDS = 25
_SMALL_WORD = 3


def with_true_formats(syllabus: Syllabus, ask: Ask) -> Ask:
    """The ask with those of its formats in which it can be put; they may be none."""
    formats = tuple(one for one in ask.formats if _can_be_put(syllabus, ask, one))
    return ask if formats == ask.formats else replace(ask, formats=formats)


def _can_be_put(syllabus: Syllabus, ask: Ask, format_: Format) -> bool:
    if format_ in TYPED_FORMATS:
        return not _tells_the_answer(syllabus, ask)
    return len(ask.stem.split()) <= LONGEST_STEM_WORDS


def _tells_the_answer(syllabus: Syllabus, ask: Ask) -> bool:
    """Whether the question holds all words of an accepted term: the nerve to subclavius, and subclavius."""
    asked = set(form_of(ask.wording).split())
    vocabulary = syllabus.vocabulary()
    accepted = (term for concept in (*ask.key, *ask.also) for term in accepted_terms(vocabulary, concept))
    words = (form_of(term).split() for term in accepted)
    return any({word for word in term if len(word) > _SMALL_WORD} <= asked for term in words)
