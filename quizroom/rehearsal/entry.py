"""Getting in: whether a server is there, and a desk's cookie for a one-time key."""

import json
from http.client import HTTPConnection, HTTPException
from http.cookies import SimpleCookie
from typing import Any
from urllib.parse import urlsplit

WAIT_S = 5.0


class CannotRehearse(Exception):
    """There can be no rehearsal, or it cannot go on; the text says why and what to do."""


def find_server(address: str) -> None:
    """See whether a quizroom answers at the address.

    Raises:
        CannotRehearse: it does not.
    """
    status, _, body = _get(address, "/healthz")
    if status != 200 or b"ok" not in body:
        raise CannotRehearse(f"What answers at {address} is no quizroom. Name its port: --port")


def desk_cookie(address: str, key: str) -> str:
    """Exchange a one-time key for the cookie of a host's browser.

    Raises:
        CannotRehearse: the server does not take the key, because it was put into the data of another one.
    """
    status, headers, _ = _get(address, f"/desk/enter/{key}")
    cookies = SimpleCookie(headers.get("set-cookie", ""))
    if status != 303 or not cookies:
        raise CannotRehearse(
            f"The server at {address} keeps its data somewhere else. "
            "Name the folder that it printed when it started: --data FOLDER"
        )
    return "; ".join(f"{name}={cookie.value}" for name, cookie in cookies.items())


def desk_settings(address: str, cookie: str) -> dict[str, Any]:
    """What the desk offers: courses and families."""
    _, _, body = _get(address, "/desk/settings", cookie=cookie)
    settings: dict[str, Any] = json.loads(body)
    return settings


def _get(address: str, path: str, *, cookie: str = "") -> tuple[int, dict[str, str], bytes]:
    connection = HTTPConnection(urlsplit(address).netloc, timeout=WAIT_S)
    try:
        connection.request("GET", path, headers={"Cookie": cookie} if cookie else {})
        response = connection.getresponse()
        headers = {name.lower(): value for name, value in response.getheaders()}
        return response.status, headers, response.read()
    except (OSError, HTTPException) as error:
        raise CannotRehearse(
            f"No quizroom answers at {address}. Start it first, in another window: python3 -m quizroom"
        ) from error
    finally:
        connection.close()
