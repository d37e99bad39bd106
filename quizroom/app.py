"""The server: puts all parts together and listens. The only file that names eventlet.

Importing it patches the standard library; it is imported by `quizroom serve` alone.
"""

import os
import warnings

# The server looks up no names; without eventlet's own resolver it is ready a tenth of a second sooner.
os.environ.setdefault("EVENTLET_NO_GREENDNS", "yes")
# It says on import that new projects should not take it. DEVELOPERS.md says why this one does.
warnings.filterwarnings("ignore", message=r"\s*Eventlet is deprecated")

import eventlet

eventlet.monkey_patch()

# ruff: noqa: E402 -- nothing may be imported before the patch
import signal
import time
from collections.abc import Callable
from functools import partial
from typing import Any

import eventlet.tpool
import eventlet.wsgi
from flask import Flask
from flask_socketio import SocketIO
from sqlalchemy import Engine

from quizroom.assembly import (
    keeping_of,
    meters_of,
    notices_of,
    timed,
    tries_of,
)
from quizroom.collector import let_the_collector_wait
from quizroom.knowledge.catalogue import Catalogue
from quizroom.pages.bundle import STATIC, read_manifest
from quizroom.pages.host_parts import entry_over, hosts_over
from quizroom.pages.mine_parts import mine_over, own_requests
from quizroom.pages.own_parts import library_over, pictures_over
from quizroom.pages.site import add_pages
from quizroom.parts import Parts
from quizroom.realtime import wire_json
from quizroom.realtime.alarms import (
    ALARM_EVERY_S,
    FORGET_EVERY_S,
    Pulse,
    any_round_is_open,
    close_rounds_that_are_over,
    forget_finished_rooms,
    give_back_lost_time,
    move_groups_on,
    open_doors_that_are_due,
    ring_bells,
)
from quizroom.realtime.broadcast import Broadcast, keep_telling
from quizroom.realtime.fellows import Fellow, join_the_others
from quizroom.realtime.framed import FramedManager, TextPacket
from quizroom.realtime.frames import without_deflate
from quizroom.realtime.green import Bell, green_of
from quizroom.realtime.host_watch import WATCH_HOSTS_EVERY_S, close_desks_of_the_gone
from quizroom.realtime.journal import note_steps
from quizroom.realtime.lasting import keep_running
from quizroom.realtime.leaving import LEAVING_S, Leaving
from quizroom.realtime.polls import LOOK_EVERY_S, hang_up, let_go_of_who_does_not_fetch, with_plain_polls
from quizroom.realtime.presence import Presence
from quizroom.realtime.seats import Seats
from quizroom.service.class_work import ClassWork
from quizroom.service.forgetting import Forgetting, erase_what_is_due, wipe_quietly
from quizroom.service.pictures import sweep_quietly
from quizroom.service.ports import EventLog, Notices
from quizroom.service.reports import Reports
from quizroom.service.review_list import ReviewList
from quizroom.service.reviews import Reviews
from quizroom.service.rooms import Change, Rooms
from quizroom.service.rosters import Rosters
from quizroom.settings import Settings
from quizroom.storage.accounts import SqlHeartbeat
from quizroom.storage.chance import new_id, new_seed
from quizroom.storage.class_choices import SqlClassChoices
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from quizroom.storage.fitness import store_fault
from quizroom.storage.kept_reviews import SqlReviews
from quizroom.storage.players import SqlPlayers
from quizroom.storage.review_shelf import SqlReviewShelf
from quizroom.storage.rosters import SqlRosters
from quizroom.storage.system_clock import SystemClock
from quizroom.storage.wiping import SqlWiping
from quizroom.wiring import answer_messages, answer_own_items, site_of

MOST_CONNECTIONS = 20_000
BACKLOG = 4096
"""With the usual backlog of 50 a class that joins all at once waits for a minute."""
LARGEST_MESSAGE = 64_000
LARGEST_REQUEST = 2_000_000
"""Bytes of a form or file sent over HTTP."""
SILENCE_S = 75.0
"""A request that does not go on for so long is given up, and so is a line on which no other follows. Proxies
keep a silent line for 60 s (nginx), and must be the first to close it."""
PING_WAIT_S = 20
"""A line that is silent for so long after a ping is gone."""
TRANSPORTS = {"any": ["websocket", "polling"], "websocket": ["websocket"]}
RETAIN_EVERY_S = 3600.0
"""How often the server looks for what has been kept long enough."""


def serve(
    settings: Settings,
    catalogue: Catalogue,
    *,
    players_address: Callable[[int], str],
    ready: Callable[[int, str], None],
) -> None:
    """Listen until told to end.

    Args:
        settings: how to run.
        catalogue: the knowledge base that items are made from.
        players_address: gives the address that players use, from the port.
        ready: is told the port and a one-time key for the desk.
    """
    manifest = read_manifest()
    listener = eventlet.listen((settings.host, settings.port), backlog=BACKLOG)
    port: int = listener.getsockname()[1]
    parts = put_together(settings, catalogue)
    add_pages(parts.web, site_of(parts, manifest, players_address(port), breathe=lambda: eventlet.sleep(0)))
    answer_own_items(parts, run_apart=eventlet.tpool.execute)
    if parts.meters:
        parts.meters.watch(rooms=parts.rooms.live, connections=lambda: len(parts.seats.all()))
    parts.class_work.catch_up()
    _let_run(keep_telling, parts.broadcast, parts.rooms.live, time.monotonic)
    _let_run(_keep_promises, parts)
    _let_run(_watch_polls, parts)
    if settings.is_shared:
        join_the_others(
            _fellow(parts), spawn=_let_run, then=lambda alone: _let_run(_keep_time, parts, alone=alone)
        )
    else:
        give_back_lost_time(parts.rooms, parts.log, parts.heartbeat, parts.clock)
        _let_run(_keep_time, parts, alone=True)
    let_the_collector_wait()
    ready(port, parts.entry.new_key())
    _listen(parts, listener)


def _let_run(loop: Callable[..., object], *arguments: Any, **more: Any) -> None:
    """Run a loop beside all others, for as long as the server lives."""
    eventlet.spawn(keep_running, partial(loop, *arguments, **more), eventlet.sleep)


def _fellow(parts: Parts) -> Fellow:
    return Fellow(
        rooms=parts.rooms,
        log=parts.log,
        seats=parts.seats,
        heartbeat=parts.heartbeat,
        clock=parts.clock,
        notices=parts.notices,
        sleep=eventlet.sleep,
    )


def _listen(parts: Parts, listener: Any) -> None:
    signal.signal(signal.SIGTERM, lambda *_: setattr(parts.leaving, "asked", True))
    serving = eventlet.spawn(
        eventlet.wsgi.server,
        listener,
        with_plain_polls(without_deflate(parts.web)),
        log_output=False,
        max_size=MOST_CONNECTIONS,
        socket_timeout=SILENCE_S,
        # Else an error's text would go to whoever has called it forth.
        debug=False,
    )
    while not parts.leaving.asked:
        eventlet.sleep(ALARM_EVERY_S)
        if serving.dead:
            serving.wait()
    _leave(parts, listener)


def _leave(parts: Parts, listener: Any) -> None:
    """Let nobody in any more, note the time for open rounds, and send everybody to come back elsewhere."""
    listener.close()
    if any_round_is_open(parts.rooms):
        Pulse(parts.heartbeat, parts.clock).beat_if_due()
    for sid in parts.seats.all():
        parts.sockets.disconnect(sid)
    eventlet.sleep(LEAVING_S)


def put_together(settings: Settings, catalogue: Catalogue) -> Parts:
    """Connect the parts; nothing runs yet."""
    engine = open_database(settings.database_url, connections=settings.database_connections)
    notices = notices_of(settings)
    web, meters = _web(), meters_of(settings)
    sockets = _sockets(web, settings)
    log = timed(SqlEventLog(engine), meters)
    clock, seats, tries = SystemClock(days_ahead=settings.days_ahead), Seats(), tries_of(settings)
    players = SqlPlayers(engine)
    broadcast = Broadcast(seats=seats, clock=clock, emit=sockets.emit, breathe=lambda: eventlet.sleep(0))
    rooms = _rooms(settings, log, clock, lambda change: _note(change, broadcast, notices, class_work))
    class_work = ClassWork(rooms=rooms, choices=SqlClassChoices(engine))
    forgetting = _forgetting(engine, players, rooms)
    reviews = Reviews(catalogue, rooms, log, new_seed, class_work.experience)
    parts = Parts(
        settings=settings,
        catalogue=catalogue,
        rooms=rooms,
        log=log,
        library=library_over(engine, catalogue, clock),
        pictures=pictures_over(engine, rooms=rooms, log=log, clock=clock),
        clock=clock,
        seats=seats,
        sockets=sockets,
        heartbeat=SqlHeartbeat(engine),
        broadcast=broadcast,
        class_work=class_work,
        review_list=ReviewList(
            shelf=SqlReviewShelf(engine), reviews=reviews, erase=forgetting.forget_review, clock=clock
        ),
        hosts=hosts_over(engine, clock=clock, tries=tries, run_apart=eventlet.tpool.execute),
        entry=entry_over(engine, clock=clock),
        web=web,
        meters=meters,
        leaving=Leaving(),
        store_fault=lambda: store_fault(engine),
        notices=notices,
        players=players,
        forgetting=forgetting,
        reports=Reports(rooms=rooms, log=log, breathe=lambda: eventlet.sleep(0)),
        rosters=Rosters(store=SqlRosters(engine), clock=clock, new_id=new_id),
        tries=tries,
    )
    mine = mine_over(engine, catalogue, rooms=rooms, log=log, clock=clock)
    web.register_blueprint(own_requests(engine, mine, settings.address, run_apart=eventlet.tpool.execute))
    answer_messages(parts)
    return parts


def _web() -> Flask:
    web = Flask("quizroom", static_folder=str(STATIC), static_url_path="/static")
    web.config["MAX_CONTENT_LENGTH"] = LARGEST_REQUEST
    return web


def _rooms(
    settings: Settings, log: EventLog, clock: SystemClock, on_change: Callable[[Change], None]
) -> Rooms:
    return Rooms(
        log=log,
        clock=clock,
        on_change=on_change,
        gather=lambda: eventlet.sleep(settings.gather_ms / 1000),
        shared=settings.is_shared,
        new_signal=lambda: Bell(eventlet),
    )


def _forgetting(engine: Engine, players: SqlPlayers, rooms: Rooms) -> Forgetting:
    return Forgetting(
        players=players,
        reviews=SqlReviews(engine),
        rosters=SqlRosters(engine),
        rooms=rooms,
        wiping=SqlWiping(engine),
    )


def _note(change: Change, broadcast: Broadcast, notices: Notices, class_work: ClassWork) -> None:
    broadcast.note(change)
    class_work.note(change)
    note_steps(change)
    if change.ours:
        notices.publish(change.room.id, change.room.version)


def _sockets(web: Flask, settings: Settings) -> Any:
    # Handlers go to the python-socketio server itself: Flask's context per event would halve the answer rate.
    manager = FramedManager(green_of(eventlet))
    SocketIO(
        web,
        client_manager=manager,
        async_mode="eventlet",
        async_handlers=False,
        json=wire_json,
        serializer=TextPacket,
        http_compression=False,
        max_http_buffer_size=LARGEST_MESSAGE,
        ping_interval=settings.ping_s,
        ping_timeout=PING_WAIT_S,
        transports=TRANSPORTS[settings.transports],
    )
    return manager.take_websockets_over()


def _watch_polls(parts: Parts) -> None:
    frames = parts.sockets.eio
    while True:
        eventlet.sleep(LOOK_EVERY_S)
        let_go_of_who_does_not_fetch(frames.sockets, partial(hang_up, frames))


def _keep_promises(parts: Parts) -> None:
    keeping, looked_at = keeping_of(parts.settings), float("-inf")
    while True:
        eventlet.sleep(FORGET_EVERY_S)
        if time.monotonic() - looked_at >= RETAIN_EVERY_S and not any_round_is_open(parts.rooms):
            looked_at = time.monotonic()
            erase_what_is_due(parts.forgetting, keeping, parts.clock)
            sweep_quietly(parts.pictures)
        wipe_quietly(parts.forgetting)
        parts.reports.tidy()


def _keep_time(parts: Parts, *, alone: bool) -> None:
    pulse = Pulse(parts.heartbeat, parts.clock)
    presence = Presence(parts.rooms, parts.seats, time.monotonic)
    if alone:
        presence.expect_everybody()
    tidied_at = watched_at = time.monotonic()
    while True:
        eventlet.sleep(ALARM_EVERY_S)
        close_rounds_that_are_over(parts.rooms, parts.clock)
        ring_bells(parts.rooms, parts.clock)
        presence.look()
        move_groups_on(parts.rooms, parts.clock)
        parts.class_work.count_one()
        if parts.settings.is_shared or any_round_is_open(parts.rooms):
            pulse.beat_if_due()
        if time.monotonic() - watched_at >= WATCH_HOSTS_EVERY_S:
            watched_at = time.monotonic()
            close_desks_of_the_gone(parts.seats, parts.entry.host_of_session, parts.sockets.disconnect)
            open_doors_that_are_due(parts.review_list)
        if time.monotonic() - tidied_at >= FORGET_EVERY_S:
            tidied_at = time.monotonic()
            forget_finished_rooms(parts.rooms, parts.seats)
            parts.broadcast.forget(frozenset(room.id for room in parts.rooms.live()))
