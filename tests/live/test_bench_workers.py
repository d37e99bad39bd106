"""`bench workers` plays real rooms on two workers; how fast is for a quiet machine to say."""

import re
import subprocess
import sys
import time

import pytest
from click.testing import CliRunner

from quizroom.cli import main
from quizroom.measuring.held_back import held_back
from quizroom.measuring.processes import Running
from quizroom.measuring.workers import Comparison, Pace
from tests.services import PostgreSql, Redis


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="CPU is read from /proc: Linux")
def test_one_worker_and_two_are_measured_in_turns(postgresql: PostgreSql, redis: Redis) -> None:
    urls = ["--database-url", postgresql.new_database(), "--fanout-url", redis.url]
    size = ["--rooms", "2", "--players", "5", "--repeats", "2"]
    ran = CliRunner().invoke(main, ["bench", "workers", *urls, *size])
    found = [float(number) for number in re.findall(r"(\d+) answers/s", ran.output)]
    assert len(found) == 2, ran.output
    assert min(found) > 0
    assert re.search(r"By the clock, each with 25 % of a core, two carry \d\.\d\d times one", ran.output)


def test_without_services_it_says_what_it_needs() -> None:
    ran = CliRunner().invoke(main, ["bench", "workers"], env={"QUIZROOM_DATABASE_URL": None})
    assert ran.exit_code == 0
    assert "give --database-url and --fanout-url" in ran.output


def test_the_ratio_is_of_what_a_core_carries_and_two_have_two() -> None:
    one = Pace(answers_a_second=1000, rounds_a_second=300, rounds_a_core_second=500)
    two = Pace(answers_a_second=1500, rounds_a_second=540, rounds_a_core_second=475)
    compared = Comparison(one=one, two=two)
    assert compared.ratio == pytest.approx(1.8)
    assert compared.ratio_by_cpu == pytest.approx(1.9)


def test_a_process_that_is_held_back_gets_its_share_and_afterwards_all_of_it() -> None:
    with subprocess.Popen([sys.executable, "-c", "while True: pass"]) as busy:
        try:
            with held_back([busy.pid], 0.2):
                held = _share_of(busy.pid)
            free = _share_of(busy.pid)
        finally:
            busy.kill()
    # Wide limits: other programs may take the core, but nothing may give a stopped process time.
    assert held < 0.4
    assert free > held


def _share_of(pid: int) -> float:
    """How much CPU a process gets in half a second."""
    running = Running(pid=pid, port=0, said="")
    cpu, began = running.cpu_s(), time.perf_counter()
    time.sleep(0.5)
    return (running.cpu_s() - cpu) / (time.perf_counter() - began)
