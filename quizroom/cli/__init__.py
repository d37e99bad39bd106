"""The command line: `quizroom`, or `python3 -m quizroom` from a checkout."""

import click

from quizroom.cli.backup import backup, restore
from quizroom.cli.bench import bench
from quizroom.cli.content import content
from quizroom.cli.desk_link import desk_link
from quizroom.cli.doctor import doctor
from quizroom.cli.hosts import hosts
from quizroom.cli.items import items
from quizroom.cli.lesion import lesion
from quizroom.cli.rehearse import rehearse
from quizroom.cli.retention import retention
from quizroom.cli.serve import serve
from quizroom.cli.typed import typed


@click.group(invoke_without_command=True)
@click.pass_context
def main(context: click.Context) -> None:
    """Run a live class review of muscular anatomy. Without a command: serve."""
    if context.invoked_subcommand is None:
        context.invoke(serve)


for command in (
    serve,
    desk_link,
    hosts,
    content,
    items,
    typed,
    lesion,
    rehearse,
    bench,
    backup,
    restore,
    retention,
    doctor,
):
    main.add_command(command)

__all__ = ["main"]
