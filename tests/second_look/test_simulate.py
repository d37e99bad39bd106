"""The simulated learners forget as the published form says."""

import pytest

from quizroom.second_look.simulate import Trace, activation, chance, present


def test_check_values_of_the_published_form() -> None:
    # Pavlik & Anderson 2005, form verified, constants from memory; values computed for the trade's handbook.
    once = Trace()
    present(once, 0)
    assert activation(once, 60) == pytest.approx(-0.7247, abs=1e-4)
    assert chance(once, 60) == pytest.approx(0.4797, abs=1e-4)


@pytest.mark.parametrize(
    "second,decay,active,recalled", [(60, 0.2821, -1.0954, 0.1773), (1800, 0.2346, -0.8988, 0.3178)]
)
def test_what_is_spaced_decays_slower(second: float, decay: float, active: float, recalled: float) -> None:
    twice = Trace()
    present(twice, 0)
    present(twice, second)
    assert twice.decays[1] == pytest.approx(decay, abs=1e-4)
    assert activation(twice, 3600) == pytest.approx(active, abs=1e-4)
    assert chance(twice, 3600) == pytest.approx(recalled, abs=1e-4)


def test_what_was_never_shown_is_not_recalled() -> None:
    assert chance(Trace(), 10) < 1e-300
