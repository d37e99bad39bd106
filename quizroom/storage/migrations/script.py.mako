"""${message}."""

import sqlalchemy as sa
from alembic import op

revision = "${up_revision}"
down_revision = "${down_revision}"


def upgrade() -> None:
    """Say here what changes and why."""
    ${upgrades if upgrades else "pass"}
