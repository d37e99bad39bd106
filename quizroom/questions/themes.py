"""Making a matching: rows that are questions of one kind, laid over one list of options."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import partial
from hashlib import blake2s
from random import Random

from quizroom.questions.ask import Ask
from quizroom.questions.distractors import candidates
from quizroom.questions.model import LETTERS, Family, Item, Option, Reason, Stem
from quizroom.questions.ranks import Candidate
from quizroom.questions.reasons import reason_of_option
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.timing import seconds_for
from quizroom.questions.waiting import BONE_OF_LANDMARK
from quizroom.questions.words import OptionKind, concept_text, end_word, unit_text

MOST_BESIDE = 2
"""Options beside the keys, so that the last row is not what is left over."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Theme:
    """One kind of row: asks of a family in one direction, with options of one kind."""

    family: Family
    direction: str
    kind: OptionKind
    stem: str


THEMES: tuple[Theme, ...] = (
    Theme(
        family="nerve",
        direction="muscle_to_nerve",
        kind="nerve",
        stem="Which nerve supplies each of these muscles?",
    ),
    Theme(
        family="origin",
        direction="muscle_to_site",
        kind="landmark",
        stem="Which is {end} of each of these muscles?",
    ),
    Theme(
        family="insertion",
        direction="muscle_to_site",
        kind="landmark",
        stem="Which is {end} of each of these muscles?",
    ),
    Theme(
        family="action",
        direction="muscle_to_action",
        kind="action",
        stem="Which is an action of each of these muscles?",
    ),
    Theme(
        family="artery",
        direction="muscle_to_artery",
        kind="artery",
        stem="Which artery supplies each of these muscles?",
    ),
    Theme(
        family="look_alike",
        direction=BONE_OF_LANDMARK,
        kind="bone",
        stem="On which bone is each of these landmarks?",
    ),
)


def row_text(syllabus: Syllabus, row: Ask) -> str:
    """What a row shows: the muscle or its part, or the landmark without its bone."""
    if row.unit is None:
        return syllabus.catalogue.landmarks[row.subject].name
    return unit_text(syllabus.words, *row.unit).removeprefix("the ")


def join_rows(syllabus: Syllabus, rows: Sequence[Ask], most: int) -> tuple[Ask, ...]:
    """The first row and those after it whose keys are wrong in all other rows; neighbouring regions alone."""
    joined: list[Ask] = []
    for row in rows:
        if all(_stand_together(syllabus, row, other) for other in joined):
            joined.append(row)
        if len(joined) == most:
            break
    return tuple(joined)


def theme_ask(syllabus: Syllabus, theme: Theme, rows: tuple[Ask, ...]) -> Ask:
    """The ask for a matching of these rows."""
    end = end_word(syllabus.words, "origin" if theme.family == "origin" else "insertion")
    article = "an" if end[0] in "aeiou" else "a"
    return Ask(
        family="matching",
        direction=f"{theme.family}:{theme.direction}",
        subject=rows[0].subject,
        relation=rows[0].relation,
        kind=theme.kind,
        key=tuple(row.key[0] for row in rows),
        barred=frozenset(),
        facts=tuple(dict.fromkeys(fact for row in rows for fact in row.facts)),
        muscles=tuple(dict.fromkeys(muscle for row in rows for muscle in row.muscles)),
        formats=("matching",),
        stem=theme.stem.format(end=f"{article} {end}"),
        make=partial(_matching, rows),
    )


def _stand_together(syllabus: Syllabus, one: Ask, other: Ask) -> bool:
    known = syllabus.catalogue
    places = [known.regions[known.muscles[ask.muscles[0]].region].order for ask in (one, other)]
    orders = sorted(region.order for region in known.regions.values())
    near = abs(orders.index(places[0]) - orders.index(places[1])) <= 1
    apart = one.subject != other.subject and set(one.muscles).isdisjoint(other.muscles)
    if not near or not apart or _may_be(other, one.key[0]) or _may_be(one, other.key[0]):
        return False
    return _is_apart(syllabus, one, other.key[0], {one.key[0]})


def _may_be(row: Ask, concept: str) -> bool:
    return concept in row.key or concept in row.barred


def _matching(rows: tuple[Ask, ...], syllabus: Syllabus, ask: Ask, seed: int) -> Item | None:
    random = Random(f"{seed}/matching/{ask.id}")  # noqa: S311 -- a deal is to be repeatable, not secret
    beside = _beside(syllabus, rows, random)
    if not beside:
        return None
    options = _options(syllabus, rows, beside, random)
    letter_of = {option.concept: option.letter for option in options}
    stems = tuple(_row(syllabus, row) for row in rows)
    words = " ".join((ask.stem, *(stem.text for stem in stems)))
    return Item(
        id=blake2s(f"{random.random()}/{ask.id}".encode(), digest_size=8).hexdigest(),
        family=ask.family,
        direction=ask.direction,
        format="matching",
        subject=ask.subject,
        stem=ask.stem,
        options=options,
        key=tuple(letter_of[row.key[0]] for row in rows),
        pick=len(rows),
        accepted=(),
        near=(),
        spelling=syllabus.course.spelling,
        why=_why(stems),
        facts=ask.facts,
        muscles=ask.muscles,
        records=tuple(syllabus.record(muscle) for muscle in ask.muscles),
        seconds=seconds_for(words, [option.text for option in options], "matching", len(rows)),
        stems=stems,
    )


def _row(syllabus: Syllabus, row: Ask) -> Stem:
    why = reason_of_option(syllabus, row, row.key[0])
    return Stem(text=row_text(syllabus, row), concept=row.subject, reason=why)


def _beside(syllabus: Syllabus, rows: Sequence[Ask], random: Random) -> list[Candidate]:
    """Options that are wrong in every row and overlap with none, each taken from another row's."""
    taken = {row.key[0] for row in rows}
    chosen: list[Candidate] = []
    for row in random.sample(rows, len(rows)):
        found = (one for one in candidates(syllabus, row, random) if _is_wrong(syllabus, rows, one[0], taken))
        best = next(found, None)
        if best is not None:
            chosen.append(best)
            taken.add(best[0])
        if len(chosen) == MOST_BESIDE:
            break
    return chosen


def _is_wrong(syllabus: Syllabus, rows: Sequence[Ask], concept: str, taken: set[str]) -> bool:
    return not any(_may_be(row, concept) for row in rows) and _is_apart(syllabus, rows[0], concept, taken)


def _is_apart(syllabus: Syllabus, row: Ask, concept: str, taken: set[str]) -> bool:
    if row.unit is None:
        return concept not in taken
    overlap = syllabus.tables[row.relation].overlap
    return all(concept not in overlap(other) for other in taken)


def _options(
    syllabus: Syllabus, rows: Sequence[Ask], beside: Sequence[Candidate], random: Random
) -> tuple[Option, ...]:
    """Lettered by chance alone: sorted first, so that the order of the rows plays no part."""
    chosen: list[Candidate] = sorted([*((row.key[0], "key") for row in rows), *beside])
    random.shuffle(chosen)
    return tuple(
        Option(
            letter=letter,
            text=concept_text(syllabus.words, rows[0].kind, concept),
            concept=concept,
            reason=_reason_of(syllabus, rows, concept),
            source=source,
        )
        for letter, (concept, source) in zip(LETTERS, chosen, strict=False)
    )


def _reason_of(syllabus: Syllabus, rows: Sequence[Ask], concept: str) -> Reason:
    """What an option really is, said beside a row in which it is wrong; of a bone which landmark it has."""
    if rows[0].kind == "bone":
        row = next((row for row in rows if concept in row.key), rows[0])
        return reason_of_option(syllabus, row, concept)
    wrong = next(row for row in rows if concept not in row.key)
    return reason_of_option(syllabus, wrong, concept)


def _why(stems: Sequence[Stem]) -> Reason:
    reasons = [stem.reason for stem in stems]
    return Reason(
        text=" ".join(reason.text for reason in reasons),
        facts=tuple(dict.fromkeys(fact for reason in reasons for fact in reason.facts)),
        sources=tuple(dict.fromkeys(source for reason in reasons for source in reason.sources)),
    )
