"""What the page of own items is shown, made from what is kept."""

from collections.abc import Sequence

from quizroom.knowledge.catalogue import Catalogue
from quizroom.protocol.own_items import MuscleChoice, OwnItemFace, OwnItemLine, OwnLibrary, OwnPreview
from quizroom.questions.model import FAMILIES, Item
from quizroom.questions.own import OwnItem, tidied
from quizroom.service.own_items import OwnItems
from quizroom.service.own_ports import KeptItem
from quizroom.views.item_face import item_face
from quizroom.views.look import solution_of
from quizroom.views.moment import milliseconds


def library_face(library: OwnItems, items: Sequence[KeptItem]) -> OwnLibrary:
    """A whole library with these items."""
    catalogue = library.catalogue
    return OwnLibrary(
        items=tuple(_line(library, kept) for kept in items),
        families=FAMILIES,
        regions=tuple(
            region.name for region in sorted(catalogue.regions.values(), key=lambda one: one.order)
        ),
        muscles=_muscles(catalogue),
    )


def own_item_face(library: OwnItems, own: OwnItem, item: str = "") -> OwnItemFace:
    """An item with what is wrong with it, and as it would be asked."""
    previewed = library.preview(own)
    return OwnItemFace(
        id=item,
        own=tidied(own),
        findings=library.findings(own),
        preview=None if previewed is None else _preview(previewed),
    )


def _preview(item: Item) -> OwnPreview:
    return OwnPreview(face=item_face(item, 1), seconds=item.seconds, solution=solution_of(item, None))


def _line(library: OwnItems, kept: KeptItem) -> OwnItemLine:
    own, muscles = kept.own, library.catalogue.muscles
    known = [muscles[muscle] for muscle in own.muscles if muscle in muscles]
    regions = library.catalogue.regions
    return OwnItemLine(
        id=kept.id,
        stem=own.stem,
        format=own.format,
        family=own.family,
        region=regions[known[0].region].name if known else own.region,
        muscles=tuple(muscle.name for muscle in known),
        has_picture=own.picture is not None,
        to_mend=sum(not one.taken for one in library.findings(own)),
        changed_at=milliseconds(kept.changed_at),
    )


def _muscles(catalogue: Catalogue) -> tuple[MuscleChoice, ...]:
    choices = (
        MuscleChoice(id=one.id, name=one.name, region=catalogue.regions[one.region].name)
        for one in catalogue.muscles.values()
    )
    return tuple(sorted(choices, key=lambda one: one.name.casefold()))
