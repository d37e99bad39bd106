"""A flag of a second look reaches the desk of the review; the seat keeps all its flags in view."""

from playwright.sync_api import expect

from tests.browser.barriers import barriers
from tests.browser.conftest import LayOut
from tests.browser.screens import Screens
from tests.browser.test_second_look import missed_looks, play


def test_flags_of_past_rounds_and_of_the_second_look_can_be_put_up_and_taken_back(
    screens: Screens, lay_out: LayOut, axe_source: str
) -> None:
    mine, _ = play(screens, lay_out)
    page = mine.page
    past = page.locator(".past_round").nth(1)
    past.get_by_role("button", name="Flag round 2").click()
    expect(past.locator(".flag")).to_contain_text("Flagged: your host sees that somebody did, not who.")
    expect(past.get_by_role("button", name="Flagged round 2")).to_have_attribute("aria-pressed", "true")
    past.get_by_role("button", name="Take the flag back").click()
    expect(past.get_by_role("button", name="Flag round 2")).to_have_attribute("aria-pressed", "false")
    assert not barriers(page, axe_source)
    look = missed_looks(mine)[0]
    page.get_by_role("button", name="Flag").click()
    expect(page.locator(".flag")).to_contain_text(f"Flagged at round {look['flag']['round']} of")
    page.get_by_label("What looks wrong?").fill("My book says otherwise.")
    page.get_by_role("button", name="Send").click()
    expect(page.get_by_role("button", name="Flagged")).to_have_attribute("aria-expanded", "false")
    mine.says("Flagged for the host of that review.")
    assert not barriers(page, axe_source)
    again = mine.asked("/mine/api/second-look/", page.reload)["looks"][0]
    assert (again["flag"]["up"], again["flag"]["text"]) == (True, "My book says otherwise.")
