"""`bench workers` plays real rooms on two workers; how fast is for a quiet machine to say."""

import re
import sys

import pytest
from click.testing import CliRunner

from quizroom.cli import main
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
    assert re.search(r"Two carry \d\.\d\d times one", ran.output)


def test_without_services_it_says_what_it_needs() -> None:
    ran = CliRunner().invoke(main, ["bench", "workers"], env={"QUIZROOM_DATABASE_URL": None})
    assert ran.exit_code == 0
    assert "give --database-url and --fanout-url" in ran.output


def test_the_ratio_is_of_what_a_core_carries_and_two_have_two() -> None:
    one = Pace(answers_a_second=1000, rounds_a_core_second=500)
    two = Pace(answers_a_second=1500, rounds_a_core_second=475)
    compared = Comparison(one=one, two=two)
    assert compared.ratio == pytest.approx(1.9)
    assert compared.ratio_here == pytest.approx(1.5)
