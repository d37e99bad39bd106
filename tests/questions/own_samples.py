"""Own items of Dr. Sorrel's, for tests: one of each format, with nothing to mend."""

from quizroom.questions.model import Picture
from quizroom.questions.own import OwnItem, OwnOption

DRAWING = Picture(
    name="0" * 32,
    alt="A line drawing of the back of the forearm; an arrow points to a band at the back of the wrist.",
    width=640,
    height=400,
    credit="M. Sorrel, own drawing",
)


def best(**changes: object) -> OwnItem:
    """One best answer with three options."""
    fields: dict[str, object] = {
        "stem": "Which band holds the tendons down at the back of the wrist?",
        "options": (
            OwnOption(text="extensor retinaculum", reason="It bridges the six compartments.", is_key=True),
            OwnOption(text="flexor retinaculum", reason="It roofs the carpal tunnel, in front."),
            OwnOption(text="superficial transverse ligament", reason="It lies in the webs of the fingers."),
        ),
        "family": "own",
        "muscles": ("extensor_indicis",),
        "picture": DRAWING,
    }
    return OwnItem(**(fields | changes))  # type: ignore[arg-type]  # the names are those of the fields


def picked(**changes: object) -> OwnItem:
    """Two of five."""
    names = ("lumbricals", "interossei", "palmaris longus", "plantaris", "anconeus")
    options = tuple(
        OwnOption(text=name, reason=f"Reason for {name}.", is_key=place < 2)
        for place, name in enumerate(names)
    )
    stem = "Which two bend the knuckles while the fingers stay straight?"
    return best(format="pick_n", stem=stem, options=options, picture=None, **changes)


def typed(**changes: object) -> OwnItem:
    """Typed, with two spellings."""
    fields: dict[str, object] = {
        "format": "typed",
        "stem": "Which bone of the wrist has a hook?",
        "options": (),
        "accepted": ("hamate", "os hamatum"),
        "why": "The hook of the hamate is felt below the little finger's side of the palm.",
        "muscles": (),
        "picture": None,
    }
    return best(**(fields | changes))
