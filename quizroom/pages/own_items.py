"""The requests of the page of own items: JSON below /desk/own, for the host whose cookie comes along.

Another site cannot send them: the cookie stays at home, and browsers ask before they send such a body.
"""

from collections.abc import Callable
from dataclasses import dataclass

from flask import Blueprint, Response, jsonify, make_response, request
from werkzeug.exceptions import RequestEntityTooLarge
from werkzeug.wrappers import Response as AnyResponse

from quizroom.pages.own_faces import library_face, own_item_face
from quizroom.pages.unkept import unkept
from quizroom.protocol.own_codec import LARGEST_ITEM, OwnShown, UnreadableItem, read_own_item_sent, write_own
from quizroom.protocol.own_items import DeskProblem
from quizroom.service.own_items import MOST_ITEMS, NoSuchOwnItem, OwnItems, TooManyOwnItems
from quizroom.service.own_ports import KeptItem
from quizroom.service.ports import NotStored

NOT_HOST = "Only the host may do that. Open the desk and try again; what you wrote is still in this window."
NO_ITEM = "That item is not among your own items any more. Go back to the list."
ENOUGH_ITEMS = f"{MOST_ITEMS} items are the most. Delete some that you do not use any more."
NOT_KEPT = "The server could not keep this. Try again in a moment; what you wrote is still in this window."
TOO_LONG = "This is more text than an item may have. Shorten it and save again."
JSON_ONLY = "This address takes application/json."


@dataclass(frozen=True, slots=True, kw_only=True)
class OwnPages:
    """What these requests are answered from; `host_of_request` gives "" for whoever is no host."""

    library: OwnItems
    host_of_request: Callable[[], str]
    run_apart: Callable[..., OwnShown]
    """Calls a function where it holds nobody up: judging many items takes a while."""


def add_own_items(routes: Blueprint, own: OwnPages) -> None:
    """Give the blueprint the addresses of the library."""
    _add_reading(routes, own)
    _add_writing(routes, own)


def _add_reading(routes: Blueprint, own: OwnPages) -> None:
    library = own.library

    @routes.get("/desk/own/items")
    def items() -> AnyResponse:
        return answered(own, lambda host: own.run_apart(library_face, library, library.all(host)))

    @routes.get("/desk/own/items/<item>")
    def item(item: str) -> AnyResponse:
        return answered(own, lambda host: _face(own, library.find(host, item)))

    @routes.post("/desk/own/check")
    def check() -> AnyResponse:
        return answered(own, lambda _host: own.run_apart(own_item_face, library, read_own_item_sent(_body())))


def _add_writing(routes: Blueprint, own: OwnPages) -> None:
    library = own.library

    @routes.post("/desk/own/items")
    def write() -> AnyResponse:
        return answered(own, lambda host: _face(own, library.write(host, read_own_item_sent(_body()))))

    @routes.put("/desk/own/items/<item>")
    def mend(item: str) -> AnyResponse:
        return answered(own, lambda host: _face(own, library.mend(host, item, read_own_item_sent(_body()))))

    @routes.post("/desk/own/items/<item>/copy")
    def copy(item: str) -> AnyResponse:
        return answered(own, lambda host: _face(own, _copied(library, host, item)))

    @routes.delete("/desk/own/items/<item>")
    def drop(item: str) -> AnyResponse:
        def dropped(host: str) -> OwnShown:
            library.drop(host, item)
            return own.run_apart(library_face, library, library.all(host))

        return answered(own, dropped)


def answered(own: OwnPages, answer: Callable[[str], OwnShown]) -> AnyResponse:
    """The answer for the host who asks, or what keeps it from being given."""
    host = own.host_of_request()
    if not host:
        return problem(NOT_HOST, 403)
    try:
        return unkept(make_response(jsonify(write_own(answer(host)))))
    except UnreadableItem as error:
        return problem(f"The server could not read this item: {error}.", 400)
    except WrongKind as error:
        return problem(str(error), 415)
    except RequestEntityTooLarge:
        return problem(TOO_LONG, 413)
    except NoSuchOwnItem:
        return problem(NO_ITEM, 404)
    except TooManyOwnItems:
        return problem(ENOUGH_ITEMS, 409)
    except NotStored:
        return problem(NOT_KEPT, 503)


class WrongKind(Exception):
    """The body is not of the kind that this address takes."""


def problem(text: str, status: int) -> Response:
    """An answer that says what to do."""
    return make_response(jsonify(write_own(DeskProblem(problem=text))), status)


def _body() -> bytes:
    if request.mimetype != "application/json":
        raise WrongKind(JSON_ONLY)
    request.max_content_length = LARGEST_ITEM
    return request.get_data()


def _copied(library: OwnItems, host: str, item: str) -> KeptItem:
    if request.mimetype != "application/json":
        raise WrongKind(JSON_ONLY)
    return library.duplicate(host, item)


def _face(own: OwnPages, kept: KeptItem) -> OwnShown:
    return own.run_apart(own_item_face, own.library, kept.own, kept.id)
