"""Players are found by key and by handle as if everybody were looked at."""

from hypothesis import given
from hypothesis import strategies as st

from quizroom.room.handles import same_handle
from quizroom.room.roster import Roster, roster_of
from quizroom.room.state import Player

HANDLES = st.sampled_from(("Ada", "ADA", "ada", "Ben", "\uff22en", "Cleo", "Dan"))
PLAYERS = st.lists(st.tuples(st.integers(0, 8), HANDLES), max_size=30)


def player(number: int, handle: str) -> Player:
    return Player(id=f"p{number}", handle=handle, key_hash=f"hash {number}", from_round=1)


@given(PLAYERS)
def test_a_seat_key_and_a_handle_lead_to_their_player(entered: list[tuple[int, str]]) -> None:
    roster, plain = roster_of({}), dict[str, Player]()
    for number, handle in entered:
        someone = player(number, handle)
        roster, plain = roster.with_player(someone), {**plain, someone.id: someone}
    assert roster == plain
    for someone in plain.values():
        assert roster.of_key(someone.key_hash) == someone
        found = roster.of_handle(someone.handle)
        assert found is not None
        assert same_handle(found.handle, someone.handle)
    assert roster.of_key("nobody's") is None
    assert roster.of_handle("Zoe") is None


@given(PLAYERS)
def test_a_roster_made_at_once_is_that_of_players_entering_in_turn(entered: list[tuple[int, str]]) -> None:
    distinct = {number: player(number, f"{handle} {number}") for number, handle in entered}
    in_turn = roster_of({})
    for someone in distinct.values():
        in_turn = in_turn.with_player(someone)
    at_once = roster_of({someone.id: someone for someone in distinct.values()})
    assert isinstance(at_once, Roster)
    assert at_once == in_turn
    for someone in distinct.values():
        assert at_once.of_handle(someone.handle) == in_turn.of_handle(someone.handle) == someone


def test_who_has_another_handle_is_not_found_by_the_old_one() -> None:
    roster = roster_of({}).with_player(player(1, "Ada")).with_player(player(1, "Ben"))
    assert roster.of_handle("ada") is None
    assert roster.of_handle("BEN") == player(1, "Ben")
