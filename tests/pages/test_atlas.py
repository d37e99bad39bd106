"""The atlas as a reader without scripts gets it."""

import re

import pytest
from flask import Blueprint, Flask
from flask.testing import FlaskClient

from quizroom.knowledge.catalogue import Catalogue
from quizroom.pages.records import Atlas, add_atlas
from tests.shipped import content

MANIFEST = {"src/records.tsx": {"file": "assets/records.js", "css": ["assets/records.css"]}}


@pytest.fixture(scope="module")
def catalogue() -> Catalogue:
    return content()


@pytest.fixture(scope="module")
def client(catalogue: Catalogue) -> FlaskClient:
    app = Flask("quizroom")
    routes = Blueprint("pages", "quizroom.pages.site", template_folder="templates")
    add_atlas(routes, Atlas(catalogue=catalogue, manifest=MANIFEST))
    app.register_blueprint(routes)
    return app.test_client()


def links_to_records(html: str) -> set[str]:
    return set(re.findall(r'href="/records/(\w+)"', html))


def test_all_records_are_listed(client: FlaskClient, catalogue: Catalogue) -> None:
    assert links_to_records(client.get("/records").text) == set(catalogue.muscles)


def test_a_search_by_landmark_names_the_landmark(client: FlaskClient) -> None:
    page = client.get("/records?q=coracoid").text
    assert {"pectoralis_minor", "biceps_brachii", "coracobrachialis"} <= links_to_records(page)
    assert "insertion: coracoid process of the scapula" in page


def test_filters_narrow_and_stay_chosen(client: FlaskClient) -> None:
    page = client.get("/records?region=arm&compartment=arm_posterior").text
    assert "triceps_brachii" in links_to_records(page)
    assert "biceps_brachii" not in links_to_records(page)
    assert '<option value="arm" selected>' in page


def test_nothing_found_says_what_to_try(client: FlaskClient) -> None:
    assert "Try fewer or shorter words" in client.get("/records?q=zzz").text


def test_what_was_asked_comes_back_as_text_never_as_markup(client: FlaskClient) -> None:
    assert "<script>alert" not in client.get("/records?q=<script>alert(1)</script>").text


@pytest.mark.parametrize(
    "words", ["supraglenoid tubercle of the scapula", "musculocutaneous nerve", "Books differ"]
)
def test_a_record_is_whole_without_scripts(client: FlaskClient, words: str) -> None:
    assert words in client.get("/records/biceps_brachii").text


def test_every_record_can_be_opened(client: FlaskClient, catalogue: Catalogue) -> None:
    for muscle in catalogue.muscles.values():
        page = client.get(f"/records/{muscle.id}")
        assert page.status_code == 200
        assert f'<h1 class="record_name">{muscle.name}</h1>' in page.text


def test_look_alikes_are_linked(client: FlaskClient) -> None:
    assert "teres_minor" in links_to_records(client.get("/records/teres_major").text)


def test_the_data_of_a_record_is_what_the_wall_shows(client: FlaskClient) -> None:
    data = client.get("/records/brachialis.json").get_json()
    assert data["name"] == "brachialis"
    # common practice, no source: brachialis crosses the elbow alone
    assert [row["joint"] for row in data["joints"]] == ["elbow joint"]


@pytest.mark.parametrize("address", ["/records/nope", "/records/nope.json"])
def test_an_unknown_record_is_not_found(client: FlaskClient, address: str) -> None:
    assert client.get(address).status_code == 404
