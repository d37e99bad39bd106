"""Pictures as they are uploaded, read by their content alone and drawn anew.

What comes out is WebP of pixels and nothing else: no place and time of a photograph, no maker, no preview, no
second file behind the first. (EXIF and GPS are named by CIPA DC-008; the container is described in RFC 9649.)
"""

import io
from typing import TYPE_CHECKING

from quizroom.service.pictures import Drawing

if TYPE_CHECKING:
    from PIL.Image import Image

LARGEST_FILE = 10_000_000
"""Bytes of an upload: what a phone's camera writes."""
MOST_PIXELS = 50_000_000
"""Of an upload; a file of few bytes may unfold into many."""
LONGEST_SIDE = 1600
"""Pixels of what is kept: enough for a projector, light enough for a room of phones."""
SHORTEST_SIDE = 16
HEAVY = 300_000
"""Bytes above which a drawing without loss is kept with loss."""
FORMATS = ("PNG", "JPEG", "WEBP")


class BadPicture(Exception):
    """The file cannot be shown; the text says why, and what to do."""


def drawn_anew(body: bytes) -> Drawing:
    """The picture in a file.

    One that this function has made comes out as it went in, so that a review can be handed on without loss.

    Raises:
        BadPicture: it is none of PNG, JPEG and WebP, is damaged, moves, or is too large or too small.
    """
    if len(body) > LARGEST_FILE:
        raise BadPicture(
            f"The file has more than {LARGEST_FILE // 1_000_000} MB. Save it smaller and try again."
        )
    shown = _opened(body)
    if is_bare(body) and max(shown.size) <= LONGEST_SIDE:
        return Drawing(body=body, width=shown.width, height=shown.height)
    shown.thumbnail((LONGEST_SIDE, LONGEST_SIDE))
    return Drawing(body=_written(shown, body), width=shown.width, height=shown.height)


def is_bare(body: bytes) -> bool:
    """Whether a file is WebP that holds one picture and nothing beside it."""
    if body[:4] != b"RIFF" or body[8:12] != b"WEBP" or int.from_bytes(body[4:8], "little") + 8 != len(body):
        return False
    place, names = 12, []
    while place + 8 <= len(body):
        names.append(body[place : place + 4])
        length = int.from_bytes(body[place + 4 : place + 8], "little")
        place += 8 + length + length % 2
    return place == len(body) and set(names) <= {b"VP8 ", b"VP8L", b"VP8X", b"ALPH"}


def _opened(body: bytes) -> "Image":
    from PIL import Image, ImageOps  # noqa: PLC0415 - a quarter of a second that only uploads need

    # The size is judged below, before anything is unfolded; the library would only warn.
    Image.MAX_IMAGE_PIXELS = None
    try:
        picture = Image.open(io.BytesIO(body), formats=FORMATS)
        _refuse_unfit(picture)
        picture.load()
        return _plain(ImageOps.exif_transpose(picture))
    except (OSError, ValueError, SyntaxError, ArithmeticError, EOFError) as error:
        text = (
            "This is no PNG, JPEG or WebP that can be read. Save the picture as one of these and try again."
        )
        raise BadPicture(text) from error


def _refuse_unfit(picture: "Image") -> None:
    if picture.width * picture.height > MOST_PIXELS:
        millions = picture.width * picture.height // 1_000_000
        raise BadPicture(f"The picture has {millions} million pixels. Save it smaller and try again.")
    if min(picture.size) < SHORTEST_SIDE:
        raise BadPicture(
            f"The picture is less than {SHORTEST_SIDE} pixels wide or high: nobody would see it."
        )
    if getattr(picture, "n_frames", 1) > 1:
        raise BadPicture("The picture moves. Save a single frame: nothing flashes or moves in a review.")


def _plain(picture: "Image") -> "Image":
    """Red, green and blue, and what shines through if anything does."""
    clear = "A" in picture.getbands() or "transparency" in picture.info
    return picture.convert("RGBA" if clear else "RGB")


def _written(picture: "Image", body: bytes) -> bytes:
    is_photograph = body[:3] == b"\xff\xd8\xff"
    drawn = b"" if is_photograph else _saved(picture, lossless=True)
    return drawn if drawn and len(drawn) <= HEAVY else _saved(picture, lossless=False)


def _saved(picture: "Image", *, lossless: bool) -> bytes:
    out = io.BytesIO()
    picture.save(out, "WEBP", lossless=lossless, quality=80, method=4)
    return out.getvalue()
