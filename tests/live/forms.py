"""Forms of the pages, sent to a real server without a browser."""

from http.client import HTTPConnection
from urllib.parse import urlencode

from quizroom.pages.host_entry import form_proof
from quizroom.pages.host_forms import FORM_COOKIE
from tests.serving import Server

BROWSER = "this-browser"


def wrong_sign_in(server: Server, name: str) -> str:
    """The page that somebody gets who signs in by a name and a password that do not belong together."""
    form = {"proof": form_proof(BROWSER), "name": name, "password": "some words or other"}
    headers = {"Content-Type": "application/x-www-form-urlencoded", "Cookie": f"{FORM_COOKIE}={BROWSER}"}
    connection = HTTPConnection("127.0.0.1", server.port, timeout=30)
    try:
        connection.request("POST", "/sign-in", urlencode(form), headers)
        return connection.getresponse().read().decode()
    finally:
        connection.close()
