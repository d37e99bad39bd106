"""A record made by hand."""

from quizroom.knowledge.record import (
    ActionLine,
    DifferLine,
    Head,
    JointRow,
    NervePath,
    NoteLine,
    Record,
    Site,
    SourceLine,
)

CITED = ("common practice",)


def record(name: str, *, nerve: str) -> Record:
    """A short record of a muscle with one head, one joint and one nerve."""
    site = Site(
        landmark="tuberosity",
        bone="humerus",
        label="deltoid tuberosity",
        detail="",
        tissue="bone",
        status="core",
        sources=CITED,
    )
    return Record(
        muscle=name.lower(),
        name=name,
        latin=f"Musculus {name.lower()}",
        meaning="",
        region="shoulder",
        compartment="",
        layer="",
        names=(),
        heads=(Head(name="", origins=(site,), insertions=(site,)),),
        joints=(_joint(),),
        nerves=(_nerve(nerve),),
        arteries=(),
        lookalikes=(),
        differ=(DifferLine(about="nerve", text="Books differ.", sources=CITED),),
        notes=(NoteLine(text="A note.", kind="teaching", sources=CITED),),
        cautions=(),
        sources=(SourceLine(id="common practice", title="Common practice", access="common practice"),),
    )


def _joint() -> JointRow:
    action = ActionLine(
        movement="abduction",
        verb="abducts",
        role="prime",
        part="",
        condition="",
        status="core",
        sources=CITED,
    )
    return JointRow(joint="shoulder joint", parts=(), actions=(action,))


def _nerve(name: str) -> NervePath:
    return NervePath(
        nerve=name,
        path=("brachial plexus", name),
        roots=("C5", "C6"),
        main=("C5",),
        part="",
        branch="",
        status="core",
        sources=CITED,
    )
