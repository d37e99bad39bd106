"""Headers that every page carries."""

from flask import Response

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
}


def with_safety_headers(response: Response) -> Response:
    """Add the headers; nothing may be loaded from, framed by or sent to another site."""
    for name, value in HEADERS.items():
        response.headers.setdefault(name, value)
    return response
