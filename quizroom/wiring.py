"""Connects the parts of a server with its pages and its sockets."""

import time
from collections.abc import Callable, Mapping
from functools import partial
from typing import Any

from quizroom.assembly import (
    counted,
    desk_settings,
    group_limits,
    handle_filter_of,
    keeping_of,
    my_data,
)
from quizroom.pages.grading import Books
from quizroom.pages.groups import group_settings
from quizroom.pages.health import Health
from quizroom.pages.host_entry import session_of_cookie_header
from quizroom.pages.host_forms import HostForms
from quizroom.pages.own_parts import own_item_requests
from quizroom.pages.privacy import Privacy
from quizroom.pages.running_apart import Apart
from quizroom.pages.site import Site
from quizroom.parts import Parts
from quizroom.realtime.bench_replies import BenchReplies
from quizroom.realtime.credit_replies import CreditReplies
from quizroom.realtime.desk_replies import DeskReplies
from quizroom.realtime.door import UNKNOWN_IDS, WRONG_DOORS, Guesses
from quizroom.realtime.frames import close_on_nonsense, greeted_once
from quizroom.realtime.gateway import Gateway
from quizroom.realtime.group_replies import GroupReplies
from quizroom.realtime.leaving import faults_of
from quizroom.realtime.polls import hang_up
from quizroom.realtime.review_replies import ReviewReplies
from quizroom.realtime.seat_replies import SeatReplies
from quizroom.service.blueprints import Blueprints
from quizroom.service.gradebooks import Gradebooks
from quizroom.service.groups import Groups
from quizroom.service.own_dealing import OwnDealing
from quizroom.storage.chance import new_id, new_seed


def site_of(
    parts: Parts, manifest: Mapping[str, Any], join_address: str, *, breathe: Callable[[], None]
) -> Site:
    """What the pages show, over these parts; `breathe` lets others run in between."""
    settings = parts.settings
    return Site(
        manifest=manifest,
        catalogue=parts.catalogue,
        host_forms=HostForms(
            entry=parts.entry,
            hosts=parts.hosts,
            rooms=parts.rooms,
            log=parts.log,
            manifest=manifest,
            address=join_address,
            secure=settings.address.startswith("https://"),
        ),
        desk_settings=desk_settings(parts.catalogue, join_address),
        blueprints=Blueprints(catalogue=parts.catalogue, breathe=breathe),
        reports=parts.reports,
        group_settings=group_settings(parts.catalogue, group_limits(settings)),
        my_data=my_data(
            settings,
            players=parts.players,
            log=parts.log,
            forgetting=parts.forgetting,
            clock=parts.clock,
            breathe=breathe,
        ),
        privacy=Privacy(keeping=keeping_of(settings), contact=settings.contact),
        secure=settings.address.startswith("https://"),
        health=Health(
            faults=lambda: faults_of(parts.leaving, parts.store_fault()),
            remarks=lambda: tuple(filter(None, [parts.notices.fault()])),
            metrics=parts.meters.page if parts.meters else None,
        ),
        books=Books(
            rosters=parts.rosters,
            gradebooks=Gradebooks(log=parts.log, breathe=breathe),
            rooms=parts.rooms,
            forget_roster=parts.forgetting.forget_roster,
        ),
    )


def answer_own_items(parts: Parts, *, run_apart: Apart) -> None:
    """Let the web reach hosts' own items; `run_apart` calls what takes long where it holds nobody up."""
    parts.web.register_blueprint(
        own_item_requests(
            parts.library,
            parts.pictures,
            capacity=parts.settings.capacity,
            entry=parts.entry,
            run_apart=run_apart,
        )
    )


def answer_messages(parts: Parts) -> None:
    """Let sockets reach what answers their messages."""
    reviews = parts.review_list.reviews
    shared: dict[str, Any] = {
        "rooms": parts.rooms,
        "seats": parts.seats,
        "lines": parts.sockets,
        "broadcast": parts.broadcast,
        "clock": parts.clock,
    }
    groups = Groups(
        reviews=reviews,
        rooms=parts.rooms,
        log=parts.log,
        limits=group_limits(parts.settings),
        new_id=new_id,
    )
    seat_replies = SeatReplies(
        log=parts.log,
        new_id=new_id,
        guesses=Guesses(limit=WRONG_DOORS, tries=parts.tries),
        **handle_filter_of(parts.settings),
        **shared,
    )
    gateway = Gateway(
        seats=parts.seats,
        seat_replies=seat_replies,
        desk_replies=DeskReplies(
            reviews=reviews,
            rosters=parts.rosters,
            own_dealing=OwnDealing(reviews=reviews, own_items=parts.library),
            new_seed=new_seed,
            capacity=parts.settings.capacity,
            **shared,
        ),
        bench_replies=BenchReplies(seat_replies=seat_replies),
        credit_replies=_credit_replies(parts, seat_replies),
        review_replies=ReviewReplies(review_list=parts.review_list, rooms=parts.rooms),
        group_replies=GroupReplies(
            groups=groups, seat_replies=seat_replies, clock=parts.clock, new_seed=new_seed
        ),
        clock=parts.clock,
        session_of=session_of_cookie_header,
        host_of=parts.entry.host_of_session,
        steady=time.monotonic,
        **counted(parts.meters),
    )
    _listen(parts, gateway)


def _credit_replies(parts: Parts, seat_replies: SeatReplies) -> CreditReplies:
    guesses = Guesses(limit=UNKNOWN_IDS, tries=parts.tries)
    return CreditReplies(seat_replies=seat_replies, rosters=parts.rosters.store, guesses=guesses)


def _listen(parts: Parts, gateway: Gateway) -> None:
    parts.sockets.on("connect", greeted_once(gateway.connect))
    parts.sockets.on("disconnect", gateway.disconnect)
    parts.sockets.on("say", gateway.say)
    parts.sockets.manager.answer_at_once("say", gateway.say_text)
    frames = parts.sockets.eio
    frames.on("message", close_on_nonsense(frames.handlers["message"], partial(hang_up, frames)))
