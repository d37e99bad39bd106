"""For whoever runs the server: is it alive, is it ready, and what does it count."""

from collections.abc import Callable
from dataclasses import dataclass

from flask import Blueprint, Response, abort, jsonify

METRICS_TYPE = "text/plain; version=0.0.4; charset=utf-8"
"""Exposition format of Prometheus, text, version 0.0.4."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Health:
    """`faults` says in sentences what keeps the server from working; `metrics` is None where they are off."""

    faults: Callable[[], tuple[str, ...]]
    remarks: Callable[[], tuple[str, ...]]
    """What somebody should mend although the server works."""
    metrics: Callable[[], bytes] | None


def add_health(routes: Blueprint, health: Health) -> None:
    """Give the blueprint the operator's addresses."""

    @routes.get("/healthz")
    def alive() -> Response:
        return jsonify(status="ok")

    @routes.get("/readyz")
    def ready() -> tuple[Response, int]:
        faults = health.faults()
        status = 503 if faults else 200
        return jsonify(
            status="not ready" if faults else "ready", faults=faults, remarks=health.remarks()
        ), status

    @routes.get("/metrics")
    def metrics() -> Response:
        if health.metrics is None:
            abort(404)
        return Response(health.metrics(), content_type=METRICS_TYPE)
