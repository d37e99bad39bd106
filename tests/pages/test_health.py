"""What the operator may ask."""

from tests.pages.web import METRICS, made


def test_a_server_that_runs_is_alive_and_ready() -> None:
    browser = made().browser()
    assert browser.get("/healthz").json == {"status": "ok"}
    ready = browser.get("/readyz")
    assert (ready.status_code, ready.json) == (200, {"status": "ready", "faults": [], "remarks": []})


def test_a_server_that_cannot_work_is_alive_but_not_ready_and_says_why() -> None:
    browser = made(faults=("The database does not answer: gone",)).browser()
    assert browser.get("/healthz").status_code == 200
    ready = browser.get("/readyz")
    assert ready.status_code == 503
    assert ready.json == {
        "status": "not ready",
        "faults": ["The database does not answer: gone"],
        "remarks": [],
    }


def test_what_should_be_mended_is_remarked_while_the_server_works() -> None:
    ready = made(remarks=("Redis does not answer.",)).browser().get("/readyz")
    assert ready.status_code == 200
    assert ready.json == {"status": "ready", "faults": [], "remarks": ["Redis does not answer."]}


def test_metrics_are_told_only_where_they_are_on() -> None:
    assert made().browser().get("/metrics").status_code == 404
    told = made(metrics=True).browser().get("/metrics")
    assert told.data == METRICS
    assert told.headers["Content-Type"].startswith("text/plain; version=0.0.4")
