"""What alembic runs for every command: on the connection that it is given, in its transaction."""

from alembic import context

from quizroom.storage.schema import metadata

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=metadata,
    # SQLite cannot change most of a table in place: it is made anew and the old one copied over.
    render_as_batch=True,
)
context.run_migrations()
