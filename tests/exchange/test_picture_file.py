"""Uploaded pictures come out as pixels alone, whatever the file called itself or held besides."""

import io

import pytest
from PIL import Image, ImageChops

from quizroom.exchange.picture_file import LARGEST_FILE, LONGEST_SIDE, BadPicture, drawn_anew, is_bare
from tests.exchange.uploads import bomb, drawing, file_of, moving, photograph_with_place


@pytest.mark.parametrize("kind", ["PNG", "JPEG", "WEBP"])
def test_each_kind_is_read_by_its_content_and_comes_out_as_bare_webp(kind: str) -> None:
    drawn = drawn_anew(file_of(drawing(), kind))
    shown = Image.open(io.BytesIO(drawn.body))
    assert (shown.format, shown.size) == ("WEBP", (320, 200))
    assert (drawn.width, drawn.height) == (320, 200)
    assert is_bare(drawn.body)


def test_a_drawing_keeps_every_pixel() -> None:
    shown = Image.open(io.BytesIO(drawn_anew(file_of(drawing(), "PNG")).body)).convert("RGB")
    assert ImageChops.difference(shown, drawing()).getbbox() is None


def test_what_shines_through_still_does() -> None:
    clear = Image.new("RGBA", (64, 64), (0, 0, 0, 0))
    assert Image.open(io.BytesIO(drawn_anew(file_of(clear, "PNG")).body)).mode == "RGBA"


def test_place_time_and_maker_go_and_the_picture_stands_upright() -> None:
    body = photograph_with_place()
    assert b"Sorrel" in body
    drawn = drawn_anew(body)
    assert (drawn.width, drawn.height) == (200, 320)
    shown = Image.open(io.BytesIO(drawn.body))
    assert dict(shown.getexif()) == {}
    assert not {"exif", "xmp", "icc_profile", "comment"} & shown.info.keys()
    assert b"Sorrel" not in drawn.body


def test_a_large_picture_is_made_smaller_in_proportion() -> None:
    drawn = drawn_anew(file_of(drawing((4000, 1000)), "JPEG"))
    assert (drawn.width, drawn.height) == (LONGEST_SIDE, LONGEST_SIDE // 4)


def test_what_was_drawn_once_comes_out_as_it_went_in() -> None:
    for kind in ("PNG", "JPEG"):
        once = drawn_anew(file_of(drawing(), kind))
        assert drawn_anew(once.body) == once


def test_what_hides_behind_a_picture_goes() -> None:
    clean = drawn_anew(file_of(drawing(), "PNG")).body
    behind = clean + b"<script>alert(1)</script>"
    assert not is_bare(behind)
    assert b"script" not in drawn_anew(behind).body
    chunk = b"EXIF" + (4).to_bytes(4, "little") + b"evil"
    with_chunk = b"RIFF" + (len(clean) - 8 + len(chunk)).to_bytes(4, "little") + clean[8:] + chunk
    assert not is_bare(with_chunk)
    assert b"evil" not in drawn_anew(with_chunk).body


@pytest.mark.parametrize(
    "body,says",
    [
        (b"", "no PNG, JPEG or WebP"),
        (b"GIF89a" + b"\0" * 40, "no PNG, JPEG or WebP"),
        (b'<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>', "no PNG, JPEG or WebP"),
        (file_of(drawing(), "GIF"), "no PNG, JPEG or WebP"),
        (file_of(drawing(), "PDF"), "no PNG, JPEG or WebP"),
        (file_of(drawing(), "PNG")[:-60], "no PNG, JPEG or WebP"),
        (file_of(drawing(), "JPEG")[:40], "no PNG, JPEG or WebP"),
        (file_of(drawing((8, 300)), "PNG"), "pixels wide or high"),
        (moving(), "moves"),
        (bomb(), "million pixels"),
        (b"\x89PNG" + b"\0" * LARGEST_FILE, "10 MB"),
    ],
    ids=["empty", "gif-like", "svg", "gif", "pdf", "cut", "cut-jpeg", "thin", "moving", "bomb", "huge"],
)
def test_what_cannot_be_shown_is_refused_with_what_to_do(body: bytes, says: str) -> None:
    with pytest.raises(BadPicture, match=says):
        drawn_anew(body)
