"""What the classes of a server did, for commands that deal as the server would."""

from pathlib import Path
from typing import TYPE_CHECKING

import click

if TYPE_CHECKING:
    from quizroom.questions.experience import ClassExperience


def experience_in(data: Path | None, course: str) -> "ClassExperience":
    """What classes did with the questions of a course list, read from a data folder; nothing without one."""
    from quizroom.cli.places import clear_ends, settings_of  # noqa: PLC0415 - not before `serve` patches
    from quizroom.questions.experience import NO_EXPERIENCE, experience_of  # noqa: PLC0415 - likewise
    from quizroom.storage.class_choices import SqlClassChoices  # noqa: PLC0415 - likewise
    from quizroom.storage.database import open_database  # noqa: PLC0415 - likewise

    if data is None:
        return NO_EXPERIENCE
    settings = settings_of({"data": data})
    if not settings.is_shared and not settings.data.is_dir():
        raise click.ClickException(f"There is no data folder {data}. Give that of a server with --data")
    with clear_ends(settings):
        engine = open_database(settings.database_url)
        try:
            choices = SqlClassChoices(engine)
            return experience_of(choices.counts(course), choices.counts())
        finally:
            engine.dispose()
    return NO_EXPERIENCE
