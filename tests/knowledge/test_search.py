"""Muscles are found by whatever a student remembers of them."""

import pytest

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.search import search
from tests.shipped import content


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    return content()


@pytest.mark.parametrize(
    "text,muscle,because",
    [
        ("biceps brachii", "biceps_brachii", ""),
        ("BICEPS", "biceps_brachii", ""),
        ("FCR", "flexor_carpi_radialis", "abbreviation: FCR"),
        ("musculus brachialis", "brachialis", ""),
        ("coracoid", "coracobrachialis", "origin: coracoid process of the scapula"),
        ("supinates radioulnar", "supinator", "supination at the radioulnar joints"),
        ("musculocutaneous", "brachialis", "nerve: musculocutaneous nerve"),
        ("profunda brachii", "triceps_brachii", "artery: profunda brachii artery"),
    ],
)
def test_a_muscle_is_found_by_its_words(catalogue: Catalogue, text: str, muscle: str, because: str) -> None:
    found = {hit.muscle.id: hit.because for hit in search(catalogue, text)}
    assert found[muscle] == because


def test_the_muscle_itself_comes_before_those_that_only_mention_the_word(catalogue: Catalogue) -> None:
    assert search(catalogue, "supinator")[0].muscle.id == "supinator"


def test_nothing_asked_finds_all_and_filters_narrow(catalogue: Catalogue) -> None:
    assert len(search(catalogue, "")) == len(catalogue.muscles)
    arm = search(catalogue, "", region="arm", compartment="arm_anterior")
    assert {hit.muscle.id for hit in arm} == {"biceps_brachii", "brachialis", "coracobrachialis"}


def test_unknown_words_find_nothing(catalogue: Catalogue) -> None:
    assert search(catalogue, "zzz") == ()
