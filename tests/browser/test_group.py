"""A group of four goes through a whole review without a host, on real pages."""

from playwright.sync_api import expect

from quizroom.marking import marks_of_room
from tests.browser.barriers import barriers, too_wide
from tests.browser.group_screen import GroupSeat, come_in, door_code_of, items_of, open_group
from tests.browser.screens import LAPTOP, NARROW_PHONE, Screens
from tests.live.group import room_behind
from tests.serving import Server

ROUNDS = 3


def test_a_group_of_four_goes_through_a_whole_review_with_one_reload(
    screens: Screens, server: Server
) -> None:
    ada = open_group(screens, handle="Teal Talus", rounds=ROUNDS)
    door = door_code_of(ada)
    others = {
        "Müller-Elder": come_in(screens, door, "Müller-Elder", **LAPTOP),
        "橈骨": come_in(screens, door, "橈骨", **NARROW_PHONE),
        "O'Dock": come_in(screens, door, "O'Dock"),
    }
    wall = screens.wall(door)
    seats = {"Teal Talus": ada, **others}
    items = items_of(room_behind(server, door))
    ada.shows("4 players here")
    for seat in others.values():
        seat.is_ready()
    ada.shows("Everybody waits for you")
    ada.is_ready()
    for number in range(1, ROUNDS + 1):
        play_round(seats, items[number - 1], number)
        if number == 2:
            others["O'Dock"].page.reload()
            others["O'Dock"].reads_record()
        wall.shows(f"Round {number} of {ROUNDS}")
        for seat in seats.values():
            seat.is_ready()
    for seat in seats.values():
        seat.shows("The review is finished")
        seat.shows("Standings")
    wall.shows("The review is finished")
    room = room_behind(server, door)
    totals = {room.players[player].handle: total for player, total in marks_of_room(room).totals.items()}
    assert {handle: (total.marks, total.of) for handle, total in totals.items()} == {
        "Teal Talus": (3, 3),
        "Müller-Elder": (0, 3),
        "橈骨": (3, 3),
        "O'Dock": (3, 3),
    }
    ada.shows("3 of 3")


def play_round(seats: dict[str, GroupSeat], item: dict[str, object], number: int) -> None:
    for handle, seat in seats.items():
        seat.sees_round(number, ROUNDS)
        seat.choose(item, right=handle != "Müller-Elder")
        seat.hand_in()
    for seat in seats.values():
        seat.reads_record()


def test_a_pause_by_one_holds_all_and_another_may_end_it(screens: Screens, server: Server) -> None:
    ada = open_group(screens, handle="Ada", rounds=1)
    door = door_code_of(ada)
    bo = come_in(screens, door, "Bo")
    ada.shows("2 players here")
    for seat in (ada, bo):
        seat.is_ready()
    item = items_of(room_behind(server, door))[0]
    ada.sees_round(1, 1)
    ada.pause()
    bo.shows("Pause.")
    bo.says("Somebody asked for a pause")
    for seat in (ada, bo):
        seat.answer(item, right=True)
    bo.go_on()
    for seat in (ada, bo):
        seat.reads_record()


def test_a_single_player_is_asked_before_beginning_alone(screens: Screens) -> None:
    ada = open_group(screens, handle="Ada", rounds=1)
    ada.shows("Nobody else is here yet")
    ada.is_ready()
    ada.shows("Begin with nobody else here?")
    ada.page.get_by_role("button", name="Begin alone").click()
    ada.sees_round(1, 1)


def test_the_opener_sends_somebody_out_and_people_rename_themselves(screens: Screens) -> None:
    ada = open_group(screens, handle="Ada", rounds=1)
    stranger = come_in(screens, door_code_of(ada), "Whoever")
    stranger.page.get_by_text("Change my handle").click()
    stranger.page.get_by_label("My handle").fill("Stray Starling")
    stranger.page.get_by_role("button", name="Change", exact=True).click()
    ada.shows("Stray Starling")
    ada.page.get_by_text("Send somebody out").click()
    ada.page.get_by_role("button", name="Send Stray Starling out").click()
    stranger.shows("You are not in this room any more")
    ada.shows("1 player here")


def test_what_is_missing_is_said_before_a_room_is_opened(screens: Screens) -> None:
    page, _ = screens.page()
    page.goto(f"{screens.origin}/group")
    page.get_by_label("Rounds", exact=True).fill("0")
    page.get_by_role("button", name="Open the room").click()
    expect(page.locator(".complaint")).to_contain_text("Rounds: a number from 1 to 40.")
    page.get_by_label("Rounds", exact=True).fill("2")
    page.get_by_role("button", name="Open the room").click()
    expect(page.locator(".complaint")).to_contain_text("The handle is missing")


def test_axe_finds_no_barrier_and_nothing_is_cut_off_in_any_phase_of_a_group(
    screens: Screens, server: Server, axe_source: str
) -> None:
    page, _ = screens.page(**NARROW_PHONE)
    page.goto(f"{screens.origin}/group")
    expect(page.get_by_label("Course list")).to_be_visible()
    assert barriers(page, axe_source) + too_wide(page) == []
    ada = open_group(screens, handle="橈骨 of the Long Evening at the Table", rounds=1, **NARROW_PHONE)
    door = door_code_of(ada)
    bo = come_in(screens, door, "Müller-Elder Extensorcarpiradialislongus", **LAPTOP)
    ada.shows("2 players here")
    assert found(ada, bo, axe_source=axe_source) == []
    for seat in (ada, bo):
        seat.is_ready()
    ada.sees_round(1, 1)
    bo.pause()
    ada.shows("Pause.")
    assert found(ada, bo, axe_source=axe_source) == []
    ada.go_on()
    item = items_of(room_behind(server, door))[0]
    for seat in (ada, bo):
        seat.choose(item, right=False)
        seat.hand_in()
    for seat in (ada, bo):
        seat.reads_record()
    assert found(ada, bo, axe_source=axe_source) == []
    for seat in (ada, bo):
        seat.is_ready()
    for seat in (ada, bo):
        seat.shows("Standings")
    assert found(ada, bo, axe_source=axe_source) == []


def found(*seats: GroupSeat, axe_source: str) -> list[str]:
    return [line for seat in seats for line in barriers(seat.page, axe_source) + too_wide(seat.page)]
