"""A backup made in a storm of answers: restored, it is one moment of the class, and is played on."""

import threading
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path

import pytest
from click.testing import CliRunner

from quizroom.cli import main
from quizroom.room.events import AnswerAccepted, SeatEntered
from quizroom.storage.addresses import embedded_database
from quizroom.storage.database import open_database
from quizroom.storage.event_log import SqlEventLog
from tests.live.lesson import Lesson, gathered
from tests.serving import StartServer

PLAYERS = ("ada", "bo", "cem", "dua", "eli", "fay")


@dataclass
class Storm:
    """Everybody changes their answer again and again, each in a thread of their own."""

    lesson: Lesson
    acknowledged: dict[str, list[list[str]]] = field(default_factory=lambda: {name: [] for name in PLAYERS})
    over: threading.Event = field(default_factory=threading.Event)

    def run(self) -> list[threading.Thread]:
        threads = [threading.Thread(target=self._answer, args=(player,)) for player in PLAYERS]
        for thread in threads:
            thread.start()
        return threads

    def seen(self) -> dict[str, int]:
        """How many answers of each player are acknowledged by now."""
        return {player: len(choices) for player, choices in self.acknowledged.items()}

    def _answer(self, player: str) -> None:
        voice, turn = self.lesson.seats[player], 0
        while not self.over.is_set():
            choice = ["ABCD"[turn % 4]]
            reply = voice.say("submit_answer", round=1, choice=choice)
            if reply["result"] == "done":
                self.acknowledged[player].append(choice)
                turn += 1
            else:
                assert reply["code"] == "slow_down", reply
                self.over.wait(0.1)


@pytest.fixture
def storm(start_server: StartServer) -> Iterator[Storm]:
    lesson = gathered(start_server(), PLAYERS, families=["nerve"])
    lesson.open_next()
    storm = Storm(lesson)
    threads = storm.run()
    yield storm
    storm.over.set()
    for thread in threads:
        thread.join()
    lesson.hang_up()


def test_a_backup_in_a_storm_is_one_moment_that_is_played_on(
    storm: Storm, start_server: StartServer, tmp_path: Path
) -> None:
    lesson = storm.lesson
    while min(storm.seen().values()) < 3:
        assert lesson.seats["ada"].is_connected()
    file, elsewhere = tmp_path / "kept.gz", tmp_path / "elsewhere"
    before = after = storm.seen()
    while before == after:  # until answers were taken while it was made
        file.unlink(missing_ok=True)
        before = storm.seen()
        command("backup", str(file), "--data", str(lesson.server.data))
        after = storm.seen()
    storm.over.set()
    command("restore", str(file), "--data", str(elsewhere))
    for player, kept in logged(lesson, elsewhere).items():
        # all that was acknowledged before, and nothing after; one more may have been on its way back
        assert before[player] <= len(kept) <= after[player] + 1
        said = storm.acknowledged[player][: len(kept)]
        assert kept[: len(said)] == said
    play_on(lesson, elsewhere, start_server)


def logged(lesson: Lesson, data: Path) -> dict[str, list[list[str]]]:
    """All answers of each player in the order in which they were committed."""
    engine = open_database(embedded_database(data))
    told = SqlEventLog(engine).read(lesson.room)
    engine.dispose()
    names = {event.player: event.handle.lower() for event in told if isinstance(event, SeatEntered)}
    answers: dict[str, list[list[str]]] = {name: [] for name in names.values()}
    for event in told:
        if isinstance(event, AnswerAccepted):
            answers[names[event.player]].append(list(event.choice))
    assert answers.keys() == set(PLAYERS)
    return answers


def command(*words: str) -> None:
    ran = CliRunner().invoke(main, words)
    assert ran.exit_code == 0, ran.output


def play_on(lesson: Lesson, data: Path, start_server: StartServer) -> None:
    """Everybody finds the restored server by what their browsers hold, and the round goes on there."""
    lesson.server = replace(lesson.server, data=data)
    lesson.restart(start_server)
    assert lesson.desk()["public"]["phase"] == "answering"
    for player in PLAYERS:
        lesson.answer(player, wrong=player == "bo")
    lesson.step("close_round")
    assert lesson.desk()["public"]["answered"] == len(PLAYERS)
    assert {row["handle"]: row["marks"] for row in lesson.desk()["roster"]}["Bo"] == 0
