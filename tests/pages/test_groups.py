"""The page on which a study group opens its room."""

from tests.pages.web import made


def test_the_page_and_what_it_may_offer() -> None:
    browser = made().browser()
    assert 'data-page="group"' in browser.get("/group").text
    offered = browser.get("/group/settings").get_json()
    assert offered["open"]
    assert {"intro_upper_limb"} <= {course["id"] for course in offered["courses"]}
    assert (offered["most_players"], offered["hours"]) == (12, 4)


def test_the_front_page_knows_whether_groups_may_be_opened() -> None:
    assert 'data-groups="1"' in made().browser().get("/").text
    assert 'data-groups="0"' in made(groups=False).browser().get("/").text


def test_where_groups_are_off_the_page_says_so() -> None:
    browser = made(groups=False).browser()
    refused = browser.get("/group")
    assert refused.status_code == 403
    assert "only hosts open rooms" in refused.text
    assert browser.get("/group/settings").get_json()["open"] is False
