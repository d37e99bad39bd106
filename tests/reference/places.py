"""Attachments in the words of outside tables, held against bones and landmarks."""

import re
from collections.abc import Iterable, Iterator
from fnmatch import filter as fitting
from functools import cache

from quizroom.knowledge.anatomy import site_wholes
from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.facts import FactKind
from tests.reference.rows import Row, targets, words
from tests.reference.verdicts import Aspect, Judgement, facts_about, held, joined

Wanted = tuple[frozenset[str], ...]
"""For each pattern that a text fits, the ids of which any will do."""

OF_THE_SET = "both sides"
"""Begins what is said of a set of muscles taken together, one on each side."""
ENDS: dict[str, tuple[Aspect, tuple[FactKind, ...]]] = {
    "origin": ("origin bone", ("origin",)),
    "insertion": ("insertion bone", ("insertion",)),
    "attachment": ("either bone", ("origin", "insertion")),
}


def judge_attachment(catalogue: Catalogue, row: Row) -> Iterator[Judgement]:
    """Whether every bone, and every landmark, that the row names is recorded, with any status."""
    aspect, ends = ENDS[row.fact_type]
    recorded = [[fact.value for fact in facts_about(catalogue, one, *ends)] for one in targets(row)]
    if row.value.lower().startswith(OF_THE_SET):
        recorded = [[site for sites in recorded for site in sites]]
    bones, sites = bones_named(catalogue, row.value), sites_named(catalogue, row.value)
    if bones or not sites:
        verdicts = (held(told=bool(bones), recorded=_have(catalogue, one, bones)) for one in recorded)
        yield Judgement(aspect, joined(verdicts))
    if sites:
        verdicts = (held(told=True, recorded=_lie_at(catalogue, one, sites)) for one in recorded)
        yield Judgement("landmark", joined(verdicts))


def bones_named(catalogue: Catalogue, text: str) -> Wanted:
    """The bones that a text names, by themselves or with a landmark."""
    sites = (
        frozenset(bone for site in any_of for bone in _bones(catalogue, site))
        for any_of in sites_named(catalogue, text)
    )
    named = (*_named(tuple(catalogue.bones), "bones", text), *(any_of for any_of in sites if any_of))
    return tuple(dict.fromkeys(named))


def sites_named(catalogue: Catalogue, text: str) -> Wanted:
    """The landmarks that a text names."""
    return _named(tuple(catalogue.landmarks), "landmarks", text)


def is_named(catalogue: Catalogue, site: str, rows: Iterable[Row]) -> bool:
    """Whether one of the rows names the site, a bone it lies on or a landmark that holds it."""
    bones = catalogue.landmarks[site].bones
    return any(
        any(any_of.intersection(bones) for any_of in bones_named(catalogue, row.value))
        or any(_is_at(catalogue, site, any_of) for any_of in sites_named(catalogue, row.value))
        for row in rows
    )


@cache
def _named(ids: tuple[str, ...], table: str, text: str) -> Wanted:
    found = (ours for pattern, ours in words("places")[table].items() if re.search(pattern, text.lower()))
    return tuple(frozenset(one for glob in ours for one in fitting(ids, glob)) for ours in found)


def _have(catalogue: Catalogue, sites: list[str], wanted: Wanted) -> bool:
    bones = {bone for site in sites for bone in catalogue.landmarks[site].bones}
    return all(bones & any_of for any_of in wanted)


def _lie_at(catalogue: Catalogue, sites: list[str], wanted: Wanted) -> bool:
    return all(any(_is_at(catalogue, site, any_of) for site in sites) for any_of in wanted)


def _is_at(catalogue: Catalogue, site: str, any_of: frozenset[str]) -> bool:
    """Whether a site is one of those wanted, or lies within one."""
    return bool({site, *site_wholes(catalogue, site)} & any_of)


def _bones(catalogue: Catalogue, site: str) -> tuple[str, ...]:
    landmark = catalogue.landmarks[site]
    return landmark.bones if landmark.tissue == "bone" else ()
