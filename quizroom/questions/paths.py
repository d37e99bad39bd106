"""Orders along the trees of nerves and arteries, from the root or trunk to the branch."""

from collections.abc import Iterator, Sequence

from quizroom.knowledge.anatomy import artery_path, nerve_ancestors
from quizroom.knowledge.model import Nerve, Supply
from quizroom.questions.ask import Ask
from quizroom.questions.claim import Claim, Relation
from quizroom.questions.grammar import definite
from quizroom.questions.model import Reason
from quizroom.questions.orders import Step, neighbour_texts, sequence_of
from quizroom.questions.syllabus import Syllabus, Unit, certain_claims, certain_values, units
from quizroom.questions.words import concept_text, unit_text

FEWEST, MOST = 3, 4


def nerve_path_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """The way of a fiber from the spinal cord to each muscle, where it has three places to name."""
    for unit in units(syllabus, "nerve"):
        for nerve in certain_values(syllabus, "nerve", unit):
            claims = certain_claims(syllabus, "nerve", unit, nerve)
            chain = _nerve_chain(syllabus, nerve, claims)
            if len(chain) >= FEWEST:
                text = unit_text(syllabus.words, unit.muscle, unit.part)
                stem = f"In which order does a nerve fiber on its way to {text} pass these?"
                yield _ask("nerve", unit, claims, chain, stem)


def artery_path_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """The way of the blood to each muscle, by each of its arteries."""
    for unit in units(syllabus, "artery"):
        for artery in certain_values(syllabus, "artery", unit):
            claims = certain_claims(syllabus, "artery", unit, artery)
            chain = artery_path(syllabus.catalogue, artery)[-MOST:]
            if len(chain) >= FEWEST:
                text = unit_text(syllabus.words, unit.muscle, unit.part)
                stem = f"In which order does blood on its way to {text} pass these?"
                yield _ask("artery", unit, claims, chain, stem)


def _nerve_chain(syllabus: Syllabus, nerve: str, claims: Sequence[Claim]) -> tuple[str, ...]:
    """Places one after another on the way of one root's fibers, the last ones before the muscle.

    Where the way forks below a root, the places beside each other are left out.
    """
    known = syllabus.catalogue.nerves
    root = _root(syllabus, claims)
    before = [known[one] for one in nerve_ancestors(syllabus.catalogue, nerve) if _carries(known[one], root)]
    above = {one.id: nerve_ancestors(syllabus.catalogue, one.id) for one in before}
    strict = [
        one.id
        for one in before
        if all(one.id == two.id or one.id in above[two.id] or two.id in above[one.id] for two in before)
    ]
    strict.sort(key=lambda one: len(above[one]))
    return (*strict, nerve)[-MOST:]


def _root(syllabus: Syllabus, claims: Sequence[Claim]) -> str:
    """The segment by which the muscle is reached first of all; empty for a cranial nerve."""
    rows = (syllabus.catalogue.index.facts[fact].row for claim in claims for fact in claim.facts)
    roots = (segment for row in rows if isinstance(row, Supply) for segment in row.main or row.roots)
    return next(roots, "")


def _carries(nerve: Nerve, root: str) -> bool:
    return nerve.kind != "plexus" and (not root or root in nerve.roots)


def _ask(tree: Relation, unit: Unit, claims: Sequence[Claim], chain: tuple[str, ...], stem: str) -> Ask:
    return Ask(
        family="ordering",
        direction=f"{tree}_path",
        subject=unit.id,
        relation=tree,
        kind="nerve" if tree == "nerve" else "artery",
        key=chain,
        barred=frozenset(),
        facts=(*dict.fromkeys(claim.id for claim in claims), f"{chain[-1]}/path/-/{chain[0]}"),
        muscles=(unit.muscle,),
        unit=(unit.muscle, unit.part),
        formats=("ordering",),
        stem=stem,
        make=sequence_of(_steps),
    )


def _steps(syllabus: Syllabus, ask: Ask) -> list[Step]:
    texts = [concept_text(syllabus.words, ask.kind, concept) for concept in ask.key]
    facts = [
        syllabus.catalogue.index.facts[fact] for fact in ask.facts if fact in syllabus.catalogue.index.facts
    ]
    sources = tuple(dict.fromkeys(source for fact in facts for source in fact.sources))
    return [
        Step(concept=concept, text=text, reason=Reason(text=reason, facts=ask.facts, sources=sources))
        for concept, text, reason in zip(
            ask.key, texts, neighbour_texts([_named(text) for text in texts]), strict=True
        )
    ]


def _named(text: str) -> str:
    """With its article, unless it is a segment: "the posterior cord", "C5"."""
    return text if any(sign.isdigit() for sign in text) else definite(text)
