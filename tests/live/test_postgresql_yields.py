"""While PostgreSQL thinks, the server goes on: its driver waits in a way that lets other green threads
run.
"""

import subprocess
import sys

from quizroom.storage.addresses import usable_database_url
from tests.services import PostgreSql
from tests.serving import CHECKOUT

TWO_SLEEPERS = """
import quizroom.app  # patches, as the server does
import sys, threading, time
from sqlalchemy import text
from quizroom.storage.database import open_database

engine = open_database(sys.argv[1], connections=2)

def sleep():
    with engine.connect() as connection:
        connection.execute(text("SELECT pg_sleep(1)"))

ticks = 0
begun = time.monotonic()
threads = [threading.Thread(target=sleep) for _ in range(2)]
for thread in threads:
    thread.start()
while time.monotonic() - begun < 0.9:
    time.sleep(0.01)
    ticks += 1
for thread in threads:
    thread.join()
print(time.monotonic() - begun, ticks)
"""


def test_two_sleeping_queries_take_the_time_of_one_and_hold_nobody_up(postgresql: PostgreSql) -> None:
    command = [sys.executable, "-c", TWO_SLEEPERS, usable_database_url(postgresql.new_database())]
    ran = subprocess.run(command, capture_output=True, text=True, check=False, cwd=CHECKOUT, timeout=60)
    assert ran.returncode == 0, ran.stderr
    seconds, ticks = map(float, ran.stdout.split())
    assert 1.0 <= seconds < 1.9
    assert ticks > 20
