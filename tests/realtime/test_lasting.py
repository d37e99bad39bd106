"""What must go on goes on."""

import logging

import pytest

from quizroom.realtime.lasting import AGAIN_AFTER_S, keep_running


def test_a_loop_that_breaks_begins_again_after_a_while_and_the_log_says_why(
    caplog: pytest.LogCaptureFixture,
) -> None:
    caplog.set_level(logging.ERROR)
    slept: list[float] = []
    outcomes = iter((RuntimeError("a bug"), KeyError("another"), None))

    def loop() -> None:
        if (broken := next(outcomes)) is not None:
            raise broken

    keep_running(loop, slept.append)
    assert slept == [AGAIN_AFTER_S, AGAIN_AFTER_S]
    assert [record.levelname for record in caplog.records] == ["ERROR", "ERROR"]
    assert "a bug" in caplog.text
    assert next(outcomes, "all were used") == "all were used"


def test_whoever_ends_the_process_ends_the_loop() -> None:
    def loop() -> None:
        raise KeyboardInterrupt

    with pytest.raises(KeyboardInterrupt):
        keep_running(loop, lambda _: None)
