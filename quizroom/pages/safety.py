"""Headers that every page carries."""

from flask import Response, abort, request

from quizroom.protocol.null_characters import NULL

CONTENT_SECURITY = (
    "default-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'self'; "
    "frame-ancestors 'none'; object-src 'none'"
)
HEADERS = {
    "Content-Security-Policy": CONTENT_SECURITY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Permissions-Policy": "camera=(), microphone=(), geolocation=()",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "X-Frame-Options": "DENY",
}
OF_ONE_ALONE = ("/desk/", "/mine/api/")
"""Whatever stands below these is for one host or player, and nobody keeps it unless it says otherwise."""
STRICT_TRANSPORT = "max-age=31536000"
"""A year (RFC 6797), told only where the server's own address is https."""


def refuse_null_characters() -> None:
    """End a request whose address holds the null character: nothing of ours has it; databases refuse it."""
    if NULL in request.path or any(NULL in value for values in request.args.listvalues() for value in values):
        abort(404)


def with_safety_headers(response: Response) -> Response:
    """Add the headers; nothing may be loaded from, framed by or sent to another site."""
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    if request.path.startswith(OF_ONE_ALONE):
        response.headers.setdefault("Cache-Control", "no-store")
    return response


def with_strict_transport(response: Response) -> Response:
    """Tell browsers to come by https alone from now on."""
    response.headers["Strict-Transport-Security"] = STRICT_TRANSPORT
    return response
