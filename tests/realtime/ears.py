"""A program: what an ear of the real driver hears, and whom its bell lets go, as JSON.

In a process of its own, as the driver wants.
"""

import importlib
import json
import socket
import sys
import time
from collections.abc import Callable
from typing import Any

from quizroom.realtime.green import Bell, Ear, green_of

LIMIT_S = 10.0


def driver() -> Any:
    """The driver that the server takes."""
    return importlib.import_module("eventlet")


def main() -> None:
    """Play all scenes, each over wires of its own, and say what came of them."""
    scenes = (in_turn, while_busy, at_the_end)
    heard = {scene.__name__: played(scene) for scene in scenes}
    with driver().Timeout(LIMIT_S):
        rung = {scene.__name__: scene(Bell(driver())) for scene in (all_go_on, one_was_killed)}
    sys.stdout.write(json.dumps(heard | rung))


def played(scene: Callable[[socket.socket, socket.socket, Ear], Any]) -> Any:
    """What a scene gives, and whether its wire is still watched afterwards."""
    ours, theirs = socket.socketpair()
    ours.settimeout(0)
    ear = green_of(driver()).ear_of(ours)
    with driver().Timeout(LIMIT_S):
        given = driver().spawn(scene, ours, theirs, ear).wait()
    ear.close()
    ear.close()
    return {"given": given, "watched": is_watched(ours)}


def in_turn(ours: socket.socket, theirs: socket.socket, ear: Ear) -> list[Any]:
    """Three messages, each after the one before has been read."""
    words = iter((b"deltoid", b"soleus", b"psoas"))
    heard = []
    for word in words:
        driver().spawn(theirs.send, word)
        ear.wait()
        heard.append([ours.recv(100).decode(), is_watched(ours)])
    return heard


def while_busy(ours: socket.socket, theirs: socket.socket, ear: Ear) -> list[Any]:
    """A message that comes while the reader waits for something else."""
    theirs.send(b"first")
    ear.wait()
    ours.recv(100)
    theirs.send(b"second")
    for _ in range(3):
        driver().sleep(0)
    still = is_watched(ours)
    ear.wait()
    return [still, ours.recv(100).decode()]


def at_the_end(ours: socket.socket, theirs: socket.socket, ear: Ear) -> str:
    """The other side hangs up while the reader waits."""
    driver().spawn(theirs.shutdown, socket.SHUT_RDWR)
    ear.wait()
    return ours.recv(100).decode()


def all_go_on(bell: Bell) -> list[str]:
    """Three who wait, one who comes after it was set, and what each of them did."""
    did = list[str]()

    def wait(name: str) -> None:
        bell.wait()
        did.append(name)
        driver().sleep(0)
        did.append(f"{name} again")

    waiting = [driver().spawn(wait, name) for name in ("first", "second", "third")]
    driver().sleep(0)
    did.append("set")
    bell.set()
    for one in (*waiting, driver().spawn(wait, "late")):
        one.wait()
    return did


def one_was_killed(bell: Bell) -> list[str]:
    """Who is killed while waiting, and waits elsewhere by then, is not woken there."""
    did = list[str]()

    def wait(name: str) -> None:
        try:
            bell.wait()
        finally:
            driver().sleep(0.01)
            did.append(name)

    first, second = driver().spawn(wait, "killed"), driver().spawn(wait, "let go")
    driver().sleep(0)
    driver().spawn(first.kill)
    driver().sleep(0)
    began = time.monotonic()
    bell.set()
    second.wait()
    driver().sleep(0.02)
    return [*did, "slept" if time.monotonic() - began >= 0.01 else "woken at once"]


def is_watched(wire: socket.socket) -> bool:
    """Whether the driver's hub watches this wire."""
    hub = driver().hubs.get_hub()
    return wire.fileno() in hub.listeners[hub.READ]


if __name__ == "__main__":
    main()
