"""Players under their own keys: whose seats are whose, second looks, plans, calendar feeds."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    """Make what is missing: programs between two releases may have made some of these tables."""
    present = set(sa.inspect(op.get_bind()).get_table_names())
    for name, make in TABLES.items():
        if name not in present:
            make()


def _players() -> None:
    op.create_table(
        "players",
        sa.Column("player", sa.String(64), nullable=False),
        sa.Column("since", sa.DateTime(timezone=True), nullable=False),
        sa.Column("seen_at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("player", name="pk_players"),
    )


def _player_seats() -> None:
    op.create_table(
        "player_seats",
        sa.Column("room", sa.String(64), nullable=False),
        sa.Column("seat", sa.String(64), nullable=False),
        sa.Column("player", sa.String(64), nullable=False),
        sa.PrimaryKeyConstraint("room", "seat", name="pk_player_seats"),
        _of_a_player("player_seats"),
    )
    op.create_index("ix_player_seats_player", "player_seats", ["player"])


def _calendar_feeds() -> None:
    op.create_table(
        "calendar_feeds",
        sa.Column("player", sa.String(64), nullable=False),
        sa.Column("secret_hash", sa.String(64), nullable=False),
        sa.Column("id", sa.String(64), nullable=False),
        sa.Column("at", sa.String(8), nullable=False),
        sa.Column("told", sa.LargeBinary(), nullable=False),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("player", name="pk_calendar_feeds"),
        sa.UniqueConstraint("secret_hash", name="uq_calendar_feeds_secret_hash"),
        _of_a_player("calendar_feeds"),
    )


def _looks() -> None:
    op.create_table(
        "looks",
        sa.Column("id", sa.String(64), nullable=False),
        sa.Column("player", sa.String(64), nullable=False),
        sa.Column("set_id", sa.String(64), nullable=False),
        sa.Column("place", sa.Integer(), nullable=False),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.Column("body", sa.LargeBinary(), nullable=False),
        sa.PrimaryKeyConstraint("id", name="pk_looks"),
        _of_a_player("looks"),
    )
    op.create_index("ix_looks_player_set_id", "looks", ["player", "set_id"])


def _look_answers() -> None:
    op.create_table(
        "look_answers",
        sa.Column("look", sa.String(64), nullable=False),
        sa.Column("player", sa.String(64), nullable=False),
        sa.Column("body", sa.LargeBinary(), nullable=False),
        sa.Column("received_at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("look", name="pk_look_answers"),
        _of_a_player("look_answers"),
    )
    op.create_index("ix_look_answers_player", "look_answers", ["player"])


def _look_sets() -> None:
    op.create_table(
        "look_sets",
        sa.Column("player", sa.String(64), nullable=False),
        sa.Column("id", sa.String(64), nullable=False),
        sa.Column("kind", sa.String(16), nullable=False),
        sa.Column("title", sa.String(200), nullable=False),
        sa.Column("course", sa.String(80), nullable=False),
        sa.Column("seconds", sa.Integer()),
        sa.Column("made_at", sa.DateTime(timezone=True), nullable=False),
        sa.PrimaryKeyConstraint("player", "id", name="pk_look_sets"),
        _of_a_player("look_sets"),
    )


def _plan_settings() -> None:
    op.create_table(
        "plan_settings",
        sa.Column("player", sa.String(64), nullable=False),
        sa.Column("course", sa.String(80), nullable=False),
        sa.Column("exam_date", sa.Date()),
        sa.Column("minutes_a_day", sa.Integer(), nullable=False),
        sa.Column("time_zone", sa.String(64), nullable=False),
        sa.PrimaryKeyConstraint("player", name="pk_plan_settings"),
        _of_a_player("plan_settings"),
    )


def _of_a_player(table: str) -> sa.ForeignKeyConstraint:
    return sa.ForeignKeyConstraint(["player"], ["players.player"], name=f"fk_{table}_player_players")


TABLES = {
    "players": _players,
    "player_seats": _player_seats,
    "calendar_feeds": _calendar_feeds,
    "looks": _looks,
    "look_answers": _look_answers,
    "look_sets": _look_sets,
    "plan_settings": _plan_settings,
}
