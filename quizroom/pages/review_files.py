"""Reviews as files: handed out to their host, looked at, and taken in."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from importlib.resources import files
from typing import Any

from flask import Blueprint, Response, jsonify, make_response, request
from werkzeug.exceptions import RequestEntityTooLarge
from werkzeug.wrappers import Response as AnyResponse

from quizroom.exchange.review_file.faults import LARGEST_FILE, BadReviewFile
from quizroom.exchange.review_file.plan import plan_of
from quizroom.exchange.review_file.reading import ReadReview, events_of, items_of, read_review
from quizroom.exchange.review_file.writing import review_file
from quizroom.knowledge.catalogue import Catalogue
from quizroom.pages.filed_faces import preview_face, refused_face
from quizroom.pages.own_items import ENOUGH_ITEMS, JSON_ONLY, NOT_HOST, NOT_KEPT, problem
from quizroom.pages.pictures import ENOUGH_PICTURES
from quizroom.pages.unkept import download
from quizroom.protocol.own_codec import OwnShown, write_own
from quizroom.protocol.review_files import ReviewTaken
from quizroom.room.state import Plan, Room
from quizroom.service.filed_items import FiledItems
from quizroom.service.filed_reviews import FiledReviews
from quizroom.service.own_items import TooManyOwnItems
from quizroom.service.pictures import TooManyPictures
from quizroom.service.ports import NotStored

NO_REVIEW = "There is no such review of yours. Go back to the list of reviews."
NO_ORDER = "The address must name an order, of 1 to 64 characters, so that a repeat makes no second review."
TOO_LARGE = f"The file has more than {LARGEST_FILE // 1_000_000} MB."
LONGEST_ORDER = 64
SCHEMA = "review_file.schema.json"


@dataclass(frozen=True, slots=True, kw_only=True)
class ReviewFiles:
    """What these requests are answered from; `run_apart` calls what takes long where it holds nobody up."""

    filed: FiledReviews
    items: FiledItems
    catalogue: Catalogue
    capacity: int
    host_of_request: Callable[[], str]
    run_apart: Callable[..., Any]


def add_review_files(routes: Blueprint, pages: ReviewFiles) -> None:
    """Give the blueprint the addresses of files, and of their schema."""

    @routes.get(f"/{SCHEMA}")
    def schema_of_files() -> Response:
        text = files("quizroom.exchange").joinpath(SCHEMA).read_text("utf-8")
        return Response(text, content_type="application/schema+json")

    @routes.get("/desk/review-file/<room>")
    def file_of_review(room: str) -> AnyResponse:
        host = pages.host_of_request()
        return _written(pages, host, room) if host else problem(NOT_HOST, 403)

    @routes.post("/desk/review-file/check")
    def check_file() -> AnyResponse:
        return _answered(pages, lambda host, review: _looked_at(pages, host, review))

    @routes.post("/desk/review-file")
    def take_file() -> AnyResponse:
        order = request.args.get("order", "")
        if not 1 <= len(order) <= LONGEST_ORDER:
            return problem(NO_ORDER, 400)
        into_library = request.args.get("library", "0") == "1"
        return _answered(
            pages,
            lambda host, review: (
                _taken_with_items(pages, host, order, review)
                if into_library
                else ReviewTaken(room=_taken(pages, host, order, review).id)
            ),
        )


def _written(pages: ReviewFiles, host: str, room_id: str) -> AnyResponse:
    room = pages.filed.rooms.find(room_id)
    if room is None or room.host != host:
        return problem(NO_REVIEW, 404)
    log = pages.filed.log.read(room_id)
    happened = request.args.get("happened", "0") == "1"

    def picture_of(name: str) -> bytes | None:
        found = pages.filed.pictures.store.find(name)
        return None if found is None else found.body

    content = review_file(room, log, picture_of, happened=happened)
    return download(content, "application/json", _file_name(room.plan))


def _file_name(plan: Plan) -> str:
    words = "".join(one if one.isascii() and one.isalnum() else " " for one in plan.title).split()
    return "-".join(["quizroom-review", *words])[:80] + ".json"


def _answered(pages: ReviewFiles, answer: Callable[[str, ReadReview], OwnShown]) -> AnyResponse:
    host = pages.host_of_request()
    if not host:
        return problem(NOT_HOST, 403)
    if request.mimetype != "application/json":
        return problem(JSON_ONLY, 415)
    request.max_content_length = LARGEST_FILE
    try:
        review = pages.run_apart(read_review, request.get_data())
        return make_response(jsonify(write_own(answer(host, review))))
    except RequestEntityTooLarge:
        return problem(TOO_LARGE, 413)
    except BadReviewFile as bad:
        return make_response(jsonify(write_own(refused_face(bad))), 422)
    except TooManyOwnItems:
        return problem(ENOUGH_ITEMS, 409)
    except TooManyPictures:
        return problem(ENOUGH_PICTURES, 409)
    except NotStored:
        return problem(NOT_KEPT, 503)


def _looked_at(pages: ReviewFiles, host: str, review: ReadReview) -> OwnShown:
    seen = preview_face(review, pages.catalogue)
    return replace(seen, own_items=len(pages.items.new(host, review.file.items)))


def _taken_with_items(pages: ReviewFiles, host: str, order: str, review: ReadReview) -> ReviewTaken:
    """The review, and in the host's library what hosts wrote of it; done again it makes no doubles."""
    pages.items.refuse_too_many(host, review.file.items)
    room = _taken(pages, host, order, review)
    # As they stand in the room, so that library and review show the same pictures.
    pages.items.take(host, (*(current.dealt or current.item for current in room.rounds), *room.ahead))
    return ReviewTaken(room=room.id)


def _taken(pages: ReviewFiles, host: str, order: str, review: ReadReview) -> Room:
    room_id, known = pages.filed.room_of(host, order)
    if known is not None:
        return known
    played = review.file.happened is not None
    plan = _fitting(plan_of(review.file, capacity=pages.capacity, imported=played), review, pages.catalogue)
    names = pages.filed.keep_pictures(host, review.pictures)
    if played:
        return pages.filed.keep_played(room_id, events_of(review, room_id, host, plan, names))
    return pages.filed.lay_out(room_id, plan, items_of(review, names), host=host)


def _fitting(plan: Plan, review: ReadReview, catalogue: Catalogue) -> Plan:
    """The plan without its grid, where this server does not know the muscles by which cells are told."""
    here = catalogue.muscles.keys()
    known = all(item.by_host or (item.muscles and here >= set(item.muscles)) for item in review.file.items)
    return plan if known and plan.course in catalogue.courses else replace(plan, blueprint=None)
