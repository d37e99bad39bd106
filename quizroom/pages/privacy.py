"""What is stored, where and for how long: the handbook's page, headed by what holds on this server."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

from flask import Blueprint, render_template

from quizroom.pages.bundle import bundle_of
from quizroom.service.forgetting import Keeping

PAGE = Path(__file__).resolve().parent.parent / "handbook" / "privacy.md"
NOBODY_NAMED = "whoever runs this server; they have not said here how to reach them"


@dataclass(frozen=True, slots=True, kw_only=True)
class Privacy:
    """What holds on this server; `contact` says whom to ask."""

    keeping: Keeping
    contact: str


def add_privacy(routes: Blueprint, privacy: Privacy, manifest: Mapping[str, Any]) -> None:
    """Give the blueprint its page."""

    @routes.get("/privacy")
    def page() -> str:
        heading, text = _rendered()
        return render_template(
            "privacy.html",
            reviews=_kept_for(privacy.keeping.reviews_days, "after its end"),
            players=_kept_for(privacy.keeping.players_days, "after the last sign of them"),
            contact=privacy.contact or NOBODY_NAMED,
            heading=heading,
            text=text,
            bundle=bundle_of(manifest, "front"),
        )


def keeping_sentence(keeping: Keeping) -> str:
    """How long reviews stay, for the front page and the desk."""
    if keeping.reviews_days:
        return f"This server erases a review {_days(keeping.reviews_days, 'after its end')}."
    return "This server keeps reviews until somebody deletes them."


def _kept_for(days: int, since: str) -> str:
    return f"for {_days(days, since)}" if days else "until it is deleted"


def _days(days: int, since: str) -> str:
    return f"{days} day{'' if days == 1 else 's'} {since}"


@cache
def _rendered() -> tuple[str, str]:
    """The heading of the page, and what follows it."""
    from markdown_it import MarkdownIt  # noqa: PLC0415 - only this page needs it, and seldom

    # Raw HTML stays off: the page is ours, but nothing needs it.
    reader = MarkdownIt("commonmark", {"html": False}).enable("table")
    heading, end, text = str(reader.render(PAGE.read_text(encoding="utf-8"))).partition("</h1>")
    return heading + end, text
