"""Set: name the N muscles of a nerve, a landmark, a movement or a compartment, as far as on the list."""

from collections.abc import Iterable, Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.asking import sure_claims
from quizroom.questions.claim import Claim, Relation
from quizroom.questions.grammar import agreeing, definite, number_word
from quizroom.questions.syllabus import Syllabus, claims_reaching, muscles_not_wrong
from quizroom.questions.traits import is_asked_nerve
from quizroom.questions.words import action_text, concept_text, site_text

SMALLEST, LARGEST = 2, 6
_VAGUE_KINDS = frozenset(("septum", "capsule", "skin", "fascia", "sheath", "shaft"))
_RELATIONS: tuple[Relation, ...] = ("nerve", "attachment", "prime", "compartment")


def set_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """All sets of two to six muscles on the list."""
    for relation in _RELATIONS:
        if _is_examined(syllabus, relation):
            values = syllabus.tables[relation].by_value
            yield from (ask for value in values for ask in _set(syllabus, relation, value))


def _is_examined(syllabus: Syllabus, relation: Relation) -> bool:
    families = syllabus.course.families
    match relation:
        case "nerve":
            return "nerve" in families
        case "attachment":
            return "origin" in families and "insertion" in families
        case "prime":
            return "prime_mover" in families
        case _:
            return True


def _set(syllabus: Syllabus, relation: Relation, value: str) -> Iterator[Ask]:
    if not _is_a_topic(syllabus, relation, value):
        return
    claims = [claim for claim in sure_claims(syllabus, relation, value) if _counts(syllabus, claim)]
    members = tuple(muscle for muscle in syllabus.muscles if any(claim.muscle == muscle for claim in claims))
    if not SMALLEST <= len(members) <= LARGEST:
        return
    possible = muscles_not_wrong(syllabus, relation, value)
    contested = bool((possible & syllabus.on_list) - set(members)) or _is_doubted(syllabus, relation, value)
    stem, wording = _texts(syllabus, relation, value, claims, len(members))
    yield Ask(
        family="set",
        direction=f"{'site' if relation == 'attachment' else relation}_to_muscles",
        subject=value,
        relation=relation,
        kind="muscle",
        key=members,
        barred=possible,
        facts=tuple(dict.fromkeys(claim.id for claim in claims)),
        muscles=members,
        value=value,
        formats=("pick_n",) if contested else ("pick_n", "free_list"),
        stem=stem,
        wording=wording,
    )


def _counts(syllabus: Syllabus, claim: Claim) -> bool:
    return claim.certain and claim.muscle in syllabus.on_list


def _is_a_topic(syllabus: Syllabus, relation: Relation, value: str) -> bool:
    match relation:
        case "nerve":
            return is_asked_nerve(syllabus.catalogue, value)
        case "attachment":
            kind = syllabus.catalogue.landmarks[value].kind
            here = syllabus.tables[relation].by_value[value]
            return kind not in _VAGUE_KINDS and len({claim.muscle for claim in here if claim.usual}) > 1
        case _:
            return True


def _is_doubted(syllabus: Syllabus, relation: Relation, value: str) -> bool:
    """Whether a reading other than the usual one is recorded at all, of muscles on the list or not."""
    claims = claims_reaching(syllabus, relation, value)
    return any(not claim.usual for claim in claims if claim.muscle in syllabus.on_list)


def _texts(
    syllabus: Syllabus, relation: Relation, value: str, claims: Iterable[Claim], size: int
) -> tuple[str, str]:
    """Stem for options, and the wording for a list from memory."""
    which = f"Which {number_word(size)} of these muscles"
    name = f"Name the {number_word(size)} muscles on your list"
    match relation:
        case "nerve":
            nerve = concept_text(syllabus.words, "nerve", value)
            partly = ", wholly or in part" if any(claim.part for claim in claims) else ""
            does, supplies = agreeing(nerve, "does", "do"), agreeing(nerve, "supplies", "supply")
            stem = f"{which} {does} {definite(nerve)} supply{partly}?"
            return stem, f"{name} that {definite(nerve)} {supplies}{partly}."
        case "attachment":
            what = f"attach to {site_text(syllabus.words, value)}"
        case "prime":
            what = f"are prime movers of {action_text(syllabus.words, value)}"
        case _:
            what = f"belong to the {concept_text(syllabus.words, 'compartment', value)}"
    return f"{which} {what}?", f"{name} that {what}."
