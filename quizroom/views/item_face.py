"""An item as it is asked, for whoever answers it."""

from quizroom.questions.model import Item
from quizroom.views.item_model import ItemFace, OptionFace
from quizroom.views.picture import picture_face


def item_face(item: Item, number: int) -> ItemFace:
    """The item as asked. Options are named by letters alone, so no id can tell the key."""
    return ItemFace(
        round=number,
        family=item.family,
        format=item.format,
        stem=item.stem,
        options=tuple(OptionFace(letter=option.letter, text=option.text) for option in item.options),
        pick=item.pick,
        stems=tuple(stem.text for stem in item.stems),
        warm_up=item.warm_up,
        picture=picture_face(item),
    )
