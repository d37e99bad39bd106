"""Typed items over a lexicon small enough to be read: the words of the trade's check values."""

from dataclasses import replace
from functools import cache

from quizroom.questions.deck import items_of
from quizroom.questions.model import Accepted, Item, NearTerm, Spelling
from tests.questions.lists import REGIONAL, syllabus

LEXICON = {
    "gastrocnemius": ("gastrocnemius",),
    "sternocleidomastoid": ("sternocleidomastoid", "musculus sternocleidomastoideus"),
    "sartorius": ("sartorius",),
    "serratus_anterior": ("serratus anterior",),
    "flexor_carpi_radialis": ("flexor carpi radialis",),
    "flexor_carpi_ulnaris": ("flexor carpi ulnaris",),
    "gluteus_minimus": ("gluteus minimus",),
    "gluteus_medius": ("gluteus medius",),
    "gluteus_maximus": ("gluteus maximus",),
    "brachioradialis": ("brachioradialis",),
    "brachialis": ("brachialis",),
    "latissimus_dorsi": ("latissimus dorsi",),
    "infraspinatus": ("infraspinatus",),
    "supraspinatus": ("supraspinatus",),
    "abductor_hallucis": ("abductor hallucis",),
    "adductor_hallucis": ("adductor hallucis",),
    "ilium": ("ilium",),
    "ileum": ("ileum",),
    "peroneal_nerve": ("peroneal nerve", "fibular nerve"),
    "perineal_nerve": ("perineal nerve",),
    "biceps_brachii": ("biceps brachii",),
    "triceps_brachii": ("triceps brachii",),
    "extensor_pollicis_longus": ("extensor pollicis longus",),
    "extensor_pollicis_brevis": ("extensor pollicis brevis",),
}


def typed_item(concept: str, spelling: Spelling = "accept") -> Item:
    """An item that asks for one concept of the small lexicon, all others being near."""
    others = [(other, term) for other, terms in LEXICON.items() if other != concept for term in terms]
    return replace(
        any_typed_item(),
        accepted=(Accepted(concept=concept, text=LEXICON[concept][0], terms=LEXICON[concept]),),
        near=tuple(NearTerm(concept=one, term=term, tells=f"This is {term}.") for one, term in others),
        spelling=spelling,
    )


@cache
def any_typed_item() -> Item:
    """A typed item of the shipped content."""
    return next(item for item in items_of(syllabus(REGIONAL), "nerve", 1) if item.format == "typed")
