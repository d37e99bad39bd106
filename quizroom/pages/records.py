"""The atlas: every record, found by any of its words. Works without JavaScript and prints."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from flask import Blueprint, Response, abort, jsonify, render_template, request

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.compose import look_alikes_of, record_of
from quizroom.knowledge.model import Muscle
from quizroom.knowledge.record import Record
from quizroom.knowledge.search import Hit, search
from quizroom.knowledge.wording import listed
from quizroom.pages.bundle import bundle_of
from quizroom.protocol.codec import write_record

LONGEST_QUESTION = 100


@dataclass(frozen=True, slots=True, kw_only=True)
class Atlas:
    """What the atlas is made from; records are composed when first asked for."""

    catalogue: Catalogue
    manifest: Mapping[str, Any]
    composed: dict[str, Record] = field(default_factory=dict)

    def record(self, muscle: str) -> Record:
        """The record of a muscle of the catalogue."""
        if muscle not in self.composed:
            self.composed[muscle] = record_of(self.catalogue, muscle)
        return self.composed[muscle]


def add_atlas(routes: Blueprint, atlas: Atlas) -> None:
    """Give the blueprint the atlas's routes."""

    @routes.get("/records")
    def records() -> str:
        return _search_page(atlas)

    @routes.get("/records/<muscle>")
    def record(muscle: str) -> str:
        if muscle not in atlas.catalogue.muscles:
            abort(404)
        return render_template(
            "record.html",
            record=atlas.record(muscle),
            listed=listed,
            alike=_alike(atlas.catalogue, atlas.catalogue.muscles[muscle]),
            bundle=bundle_of(atlas.manifest, "records"),
        )

    @routes.get("/records/<muscle>.json")
    def record_data(muscle: str) -> Response:
        if muscle not in atlas.catalogue.muscles:
            abort(404)
        return jsonify(write_record(atlas.record(muscle)))


def _search_page(atlas: Atlas) -> str:
    catalogue = atlas.catalogue
    asked = request.args.get("q", "")[:LONGEST_QUESTION]
    region, compartment = request.args.get("region", ""), request.args.get("compartment", "")
    hits = search(catalogue, asked, region=region, compartment=compartment)
    return render_template(
        "records.html",
        asked=asked,
        region=region,
        compartment=compartment,
        regions=sorted(catalogue.regions.values(), key=lambda one: one.order),
        compartments=[one for one in catalogue.compartments.values() if region in ("", one.region)],
        found=_by_region(catalogue, hits) if not asked else [("", hits)],
        count=len(hits),
        of=len(catalogue.muscles),
        bundle=bundle_of(atlas.manifest, "records"),
    )


def _by_region(catalogue: Catalogue, hits: tuple[Hit, ...]) -> list[tuple[str, list[Hit]]]:
    groups: dict[str, list[Hit]] = {}
    for hit in hits:
        groups.setdefault(catalogue.regions[hit.muscle.region].name, []).append(hit)
    return list(groups.items())


def _alike(catalogue: Catalogue, muscle: Muscle) -> list[Muscle]:
    """Muscles that share a look-alike set with this one, for links."""
    members = (
        member
        for alike in look_alikes_of(catalogue, muscle)
        if alike.kind == "muscle"
        for member in alike.members
    )
    return [
        catalogue.muscles[member]
        for member in dict.fromkeys(members)
        if member in catalogue.muscles and member != muscle.id
    ]
