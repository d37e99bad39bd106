"""Looks in the table that a player takes away."""

import csv
import io
from datetime import UTC, datetime

from quizroom.exchange.history_file import history_csv
from quizroom.second_look.asked import AskedLook, GivenAnswer
from quizroom.service.histories import History
from quizroom.storage.look_codec import write_answer, write_look
from tests.room.sample_items import one_best

NOW = datetime(2031, 10, 20, 9, 30, tzinfo=UTC)


def test_what_was_asked_alone_stands_in_the_table_answered_or_not() -> None:
    looks, answers = [], []
    for place, look_id in ((1, "l1"), (2, "l2")):
        look = AskedLook(
            id=look_id,
            player="p",
            set="day",
            place=place,
            made_at=NOW,
            course="hhc_kn_232",
            origin="plan",
            item=one_best(look_id),
        )
        looks.append({"id": look_id, "place": place, "made_at": NOW, "body": write_look(look)})
    given = GivenAnswer(
        look="l1", choice=("C",), typed=(), certainty=None, took_ms=900, answered_at=NOW, received_at=NOW
    )
    answers.append({"look": "l1", "body": write_answer(given)})
    history = History(player=None, reviews=(), kept={"looks": looks, "look_answers": answers})
    rows = list(csv.DictReader(io.StringIO(history_csv(history).decode("utf-8-sig"), newline="")))
    assert [(row["review"], row["round"], row["answer"], row["key"]) for row in rows] == [
        ("second look", "1", "C", "B"),
        ("second look", "2", "", "B"),
    ]
    assert rows[0]["answered_at"].startswith("2031-10-20T09:30")
    assert rows[1]["answered_at"] == ""
    assert "B: axillary nerve" in rows[0]["options"]
