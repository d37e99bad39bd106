"""Tables of second looks, practice and return plans. Each row refers to a player."""

from sqlalchemy import Column, Date, DateTime, ForeignKey, Index, Integer, LargeBinary, String, Table

from quizroom.storage.tables import metadata

looks = Table(
    "looks",
    metadata,
    Column("id", String(64), primary_key=True),
    Column("player", String(64), ForeignKey("players.player"), nullable=False),
    Column("set_id", String(64), nullable=False),
    Column("place", Integer, nullable=False),
    Column("made_at", DateTime(timezone=True), nullable=False),
    Column("body", LargeBinary, nullable=False),
    Index("ix_looks_player_set_id", "player", "set_id"),
)

look_answers = Table(
    "look_answers",
    metadata,
    Column("look", String(64), primary_key=True),
    Column("player", String(64), ForeignKey("players.player"), nullable=False),
    Column("body", LargeBinary, nullable=False),
    Column("received_at", DateTime(timezone=True), nullable=False),
    Index("ix_look_answers_player", "player"),
)

look_sets = Table(
    "look_sets",
    metadata,
    Column("player", String(64), ForeignKey("players.player"), primary_key=True),
    Column("id", String(64), primary_key=True),
    Column("kind", String(16), nullable=False),
    Column("title", String(200), nullable=False),
    Column("course", String(80), nullable=False),
    Column("seconds", Integer),
    Column("made_at", DateTime(timezone=True), nullable=False),
)

plan_settings = Table(
    "plan_settings",
    metadata,
    Column("player", String(64), ForeignKey("players.player"), primary_key=True),
    Column("course", String(80), nullable=False),
    Column("exam_date", Date),
    Column("minutes_a_day", Integer, nullable=False),
    Column("time_zone", String(64), nullable=False),
)
