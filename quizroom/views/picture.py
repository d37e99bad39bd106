"""A picture as a page shows it, with its twin in words."""

from dataclasses import dataclass

from quizroom.questions.model import Item


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureFace:
    """Where the picture of an item is, and what is to be seen; the address tells nothing of it."""

    address: str
    alt: str
    width: int
    height: int
    credit: str


def picture_face(item: Item) -> PictureFace | None:
    """The picture of an item, if it has one."""
    picture = item.picture
    if picture is None:
        return None
    return PictureFace(
        address=f"/picture/{picture.name}",
        alt=picture.alt,
        width=picture.width,
        height=picture.height,
        credit=picture.credit,
    )
