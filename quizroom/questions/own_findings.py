"""What is found wrong with a host's own item."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One thing that is wrong: at which field, by which rule, and what to do about it.

    An error keeps an item out of reviews, since it could not be answered, or not by everybody. A warning is
    advice that the host may set aside knowingly.
    """

    field: str
    """A field of the item; those of an option as `options.2.reason`, counted from 0."""
    rule: str
    text: str
    error: bool
    taken: bool = False
    """Whether the host has read the warning and lets it stand."""


def error(field: str, rule: str, text: str) -> Finding:
    """A finding that must be mended."""
    return Finding(field=field, rule=rule, text=text, error=True)


def is_ready(found: tuple[Finding, ...]) -> bool:
    """Whether an item with these findings may be asked."""
    return all(one.taken and not one.error for one in found)
