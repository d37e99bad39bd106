"""What attaches where, with landmarks that are parts of larger ones."""

from collections.abc import Iterator

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import Fact, FactKind
from quizroom.knowledge.model import Status

_ENDS: tuple[FactKind, ...] = ("origin", "insertion")
_EVERY: tuple[Status, ...] = ("core", "variant", "minority")


def site_wholes(catalogue: Catalogue, site: str) -> frozenset[str]:
    """The larger landmarks that this one is a part of."""
    return catalogue.index.wholes.get(site, frozenset())


def site_parts(catalogue: Catalogue, site: str) -> frozenset[str]:
    """The smaller landmarks that lie within this one."""
    return catalogue.index.site_parts.get(site, frozenset())


def sites_overlap(catalogue: Catalogue, one: str, other: str) -> bool:
    """Whether naming one site may also mean the other: the same, or whole and part."""
    return one == other or one in site_wholes(catalogue, other) or other in site_wholes(catalogue, one)


def attachments_at(
    catalogue: Catalogue, site: str, statuses: tuple[Status, ...] = _EVERY
) -> tuple[Fact, ...]:
    """Origins and insertions on the site or on a landmark within it: these surely attach there."""
    sites = (site, *sorted(site_parts(catalogue, site)))
    return tuple(_facts(catalogue, sites, statuses))


def attachments_touching(
    catalogue: Catalogue, site: str, statuses: tuple[Status, ...] = _EVERY
) -> tuple[Fact, ...]:
    """As `attachments_at`, and those on a larger landmark that holds the site: these may attach there."""
    sites = (site, *sorted(site_parts(catalogue, site) | site_wholes(catalogue, site)))
    return tuple(_facts(catalogue, sites, statuses))


def attachments_on_bone(
    catalogue: Catalogue, bone: str, statuses: tuple[Status, ...] = _EVERY
) -> tuple[Fact, ...]:
    """Origins and insertions on the landmarks of a bone; soft tissue anchored to it is left out."""
    sites = (one.id for one in catalogue.landmarks.values() if one.tissue == "bone" and bone in one.bones)
    return tuple(_facts(catalogue, tuple(sites), statuses))


def _facts(catalogue: Catalogue, sites: tuple[str, ...], statuses: tuple[Status, ...]) -> Iterator[Fact]:
    for site in sites:
        for kind in _ENDS:
            yield from (
                fact for fact in catalogue.index.facts_with.get((kind, site), ()) if fact.status in statuses
            )
