"""Files as hosts might upload them, made by the image library itself."""

import io

from PIL import Image, ImageDraw


def drawing(size: tuple[int, int] = (320, 200), mode: str = "RGB") -> Image.Image:
    """A simple drawing that is not the same in any two corners."""
    picture = Image.new(mode, size, "white")
    pen = ImageDraw.Draw(picture)
    pen.rectangle((0, 0, size[0] // 4, size[1] // 4), fill="darkred")
    pen.line((0, size[1], size[0], 0), fill="black", width=3)
    return picture


def file_of(picture: Image.Image, kind: str, **options: object) -> bytes:
    """The picture as a file of this kind."""
    out = io.BytesIO()
    picture.save(out, kind, **options)
    return out.getvalue()


def photograph_with_place() -> bytes:
    """A JPEG turned on its side that tells its maker, place and time (tags of CIPA DC-008)."""
    exif = Image.Exif()
    exif[0x0112] = 6  # orientation: to be turned clockwise
    exif[0x013B] = "M. Sorrel"  # artist
    exif.get_ifd(0x8825)[2] = (50.0, 12.0, 34.0)  # GPS latitude
    return file_of(drawing(), "JPEG", exif=exif, comment=b"room 12")


def moving() -> bytes:
    """A picture of two frames."""
    other = Image.new("RGB", (320, 200), "black")
    return file_of(drawing(), "WEBP", save_all=True, append_images=[other])


def bomb() -> bytes:
    """A few kilobytes that unfold into a hundred million pixels."""
    return file_of(Image.new("1", (10_000, 10_000)), "PNG")
