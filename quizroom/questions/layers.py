"""Orders of the layers of a compartment, from superficial to deep."""

from collections.abc import Iterator

from quizroom.questions.ask import Ask
from quizroom.questions.grammar import agreeing, capitalised
from quizroom.questions.model import Reason
from quizroom.questions.orders import Step, sequence_of
from quizroom.questions.syllabus import Syllabus
from quizroom.questions.words import concept_text, unit_text

FEWEST = 3
_SCALES = (
    ("superficial", "intermediate", "deep"),
    ("external", "internal", "innermost"),
    ("first layer", "second layer", "third layer", "fourth layer"),
)
_LAYERED = (
    *("forearm_anterior", "thigh_medial", "hip_gluteal", "foot_plantar"),
    *("abdomen_anterolateral", "thorax_wall", "back_transversospinal"),
)
"""Groups whose layers lie upon one another; in others the word tells neighbours side by side."""


def layer_asks(syllabus: Syllabus) -> Iterator[Ask]:
    """Orders of all layers of a group, no muscle in two of them."""
    for compartment in _LAYERED:
        if compartment in syllabus.catalogue.compartments:
            yield from _of_group(syllabus, compartment)


def _of_group(syllabus: Syllabus, compartment: str) -> Iterator[Ask]:
    known = syllabus.catalogue.muscles
    members = [
        muscle
        for muscle in syllabus.muscles
        if known[muscle].compartment == compartment and not _is_contested(syllabus, muscle)
    ]
    for scale in _SCALES:
        rows = [[one for one in members if known[one].layer == layer] for layer in scale]
        rows = [row for row in rows if row]
        if len(rows) >= FEWEST:
            yield from (_ask(syllabus, compartment, key) for key in zip(*rows, strict=False))


def _is_contested(syllabus: Syllabus, muscle: str) -> bool:
    return any(row.about in ("compartment", "layer") for row in syllabus.catalogue.muscles[muscle].differ)


def _ask(syllabus: Syllabus, compartment: str, key: tuple[str, ...]) -> Ask:
    return Ask(
        family="ordering",
        direction="superficial_to_deep",
        subject=compartment,
        relation="compartment",
        kind="muscle",
        key=key,
        barred=frozenset(),
        facts=tuple(f"{muscle}/layer/-/{syllabus.catalogue.muscles[muscle].layer}" for muscle in key),
        muscles=key,
        formats=("ordering",),
        stem="In which order do these muscles lie, from superficial to deep?",
        make=sequence_of(_steps),
    )


def _steps(syllabus: Syllabus, ask: Ask) -> list[Step]:
    return [
        Step(
            concept=muscle,
            text=concept_text(syllabus.words, "muscle", muscle),
            reason=_reason(syllabus, muscle),
        )
        for muscle in ask.key
    ]


def _reason(syllabus: Syllabus, muscle: str) -> Reason:
    known = syllabus.catalogue.muscles[muscle]
    layer = known.layer if known.layer.endswith("layer") else f"{known.layer} layer"
    group = concept_text(syllabus.words, "compartment", known.compartment)
    name = unit_text(syllabus.words, muscle, "")
    text = f"{capitalised(name)} {agreeing(name, 'belongs', 'belong')} to the {layer} of the {group}."
    return Reason(text=text, facts=(f"{muscle}/layer/-/{known.layer}",), sources=known.sources)
