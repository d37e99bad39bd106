"""What hosts' own items and their pictures need, put together over a database."""

from flask import Blueprint, request
from sqlalchemy import Engine

from quizroom.exchange.picture_file import drawn_anew
from quizroom.knowledge.catalogue import Catalogue
from quizroom.pages.host_entry import COOKIE, HostEntry
from quizroom.pages.own_items import OwnPages, add_own_items
from quizroom.pages.pictures import PicturePages, add_pictures
from quizroom.pages.review_files import ReviewFiles, add_review_files
from quizroom.pages.running_apart import Apart, one_at_a_time
from quizroom.service.filed_items import FiledItems
from quizroom.service.filed_reviews import FiledReviews
from quizroom.service.own_items import OwnItems
from quizroom.service.pictures import Pictures
from quizroom.service.ports import Clock, EventLog
from quizroom.service.rooms import Rooms
from quizroom.storage.chance import new_id, new_secret
from quizroom.storage.own_items import SqlOwnItems
from quizroom.storage.pictures import SqlPictures


def library_over(engine: Engine, catalogue: Catalogue, clock: Clock) -> OwnItems:
    """The library in a database."""
    return OwnItems(
        catalogue=catalogue,
        store=SqlOwnItems(engine),
        pictures=SqlPictures(engine),
        clock=clock,
        new_id=new_id,
    )


def pictures_over(engine: Engine, *, rooms: Rooms, log: EventLog, clock: Clock) -> Pictures:
    """The pictures in a database."""
    return Pictures(store=SqlPictures(engine), rooms=rooms, log=log, clock=clock, new_name=new_secret)


def own_item_requests(
    library: OwnItems, pictures: Pictures, *, capacity: int, entry: HostEntry, run_apart: Apart
) -> Blueprint:
    """All requests of the page of own items, the address of pictures, and reviews as files."""

    def host_of_request() -> str:
        host = entry.host_of_token(request.cookies.get(COOKIE, ""))
        return host.leads if host else ""

    routes, in_turn = Blueprint("own", __name__), one_at_a_time(run_apart)
    add_own_items(routes, OwnPages(library=library, host_of_request=host_of_request, run_apart=run_apart))
    add_pictures(
        routes,
        PicturePages(
            pictures=pictures,
            draw=lambda body: in_turn(drawn_anew, body),
            host_of_request=host_of_request,
        ),
    )
    filed = FiledReviews(rooms=pictures.rooms, log=pictures.log, pictures=pictures)
    add_review_files(
        routes,
        ReviewFiles(
            filed=filed,
            items=FiledItems(library=library),
            catalogue=library.catalogue,
            capacity=capacity,
            host_of_request=host_of_request,
            run_apart=in_turn,
        ),
    )
    return routes
