"""Pictures of own items: uploaded by their host, and shown to whoever may see them."""

from collections.abc import Callable
from dataclasses import dataclass

from flask import Blueprint, Response, abort, jsonify, make_response, request
from werkzeug.exceptions import RequestEntityTooLarge
from werkzeug.wrappers import Response as AnyResponse

from quizroom.exchange.picture_file import LARGEST_FILE, BadPicture
from quizroom.pages.own_items import NOT_HOST, NOT_KEPT, problem
from quizroom.protocol.own_codec import write_own
from quizroom.protocol.own_items import PictureKept
from quizroom.service.pictures import MOST_PICTURES, Drawing, Pictures, TooManyPictures
from quizroom.service.ports import NotStored

TOO_LARGE = f"The file has more than {LARGEST_FILE // 1_000_000} MB. Save it smaller and try again."
ENOUGH_PICTURES = f"{MOST_PICTURES} pictures are the most. Delete items that you do not use any more."
NO_PICTURE_SENT = "This address takes the file of a picture: PNG, JPEG or WebP."
KEEP_FOR_S = 24 * 3600
"""A picture never changes under its name; only whoever was told the name asks for it."""
POLICY = "default-src 'none'; sandbox; frame-ancestors 'none'"


@dataclass(frozen=True, slots=True, kw_only=True)
class PicturePages:
    """What these requests are answered from; `draw` reads an upload anew, and may take a while."""

    pictures: Pictures
    draw: Callable[[bytes], Drawing]
    host_of_request: Callable[[], str]


def add_pictures(routes: Blueprint, pages: PicturePages) -> None:
    """Give the blueprint the address that takes pictures, and the one that shows them."""

    @routes.post("/desk/own/pictures")
    def upload() -> AnyResponse:
        host = pages.host_of_request()
        return _kept(pages, host) if host else problem(NOT_HOST, 403)

    @routes.get("/picture/<name>")
    def picture(name: str) -> Response:
        found = pages.pictures.shown(name, host=pages.host_of_request())
        if found is None:
            abort(404)
        response = Response(found.body, content_type="image/webp")
        response.headers["Cache-Control"] = f"private, max-age={KEEP_FOR_S}, immutable"
        response.headers["Content-Security-Policy"] = POLICY
        response.headers["Content-Disposition"] = "inline"
        return response


def _kept(pages: PicturePages, host: str) -> AnyResponse:
    if not request.mimetype.startswith("image/"):
        return problem(NO_PICTURE_SENT, 415)
    request.max_content_length = LARGEST_FILE
    try:
        kept = pages.pictures.keep(host, pages.draw(request.get_data()))
    except BadPicture as error:
        return problem(str(error), 422)
    except RequestEntityTooLarge:
        return problem(TOO_LARGE, 413)
    except TooManyPictures:
        return problem(ENOUGH_PICTURES, 409)
    except NotStored:
        return problem(NOT_KEPT, 503)
    shown = PictureKept(name=kept.name, address=f"/picture/{kept.name}", width=kept.width, height=kept.height)
    return make_response(jsonify(write_own(shown)))
