"""`quizroom rehearse`."""

from pathlib import Path

import click


@click.command()
@click.option(
    "--players", type=click.IntRange(1, 200), default=24, show_default=True, help="Simulated players."
)
@click.option("--rounds", type=click.IntRange(1, 60), default=6, show_default=True, help="Rounds to play.")
@click.option(
    "--pace",
    type=click.Choice(["class", "quick"]),
    default="class",
    show_default=True,
    help="As in a class, to be looked at; or quick, to be over soon.",
)
@click.option(
    "--seed",
    type=click.IntRange(0, 2**31 - 1),
    default=232,
    show_default=True,
    help="The same seed gives the same items and the same class.",
)
@click.option("--course", default="", help="Id of a course list [default: the one with most families].")
@click.option("--data", type=click.Path(path_type=Path, file_okay=False), help="Data folder of the server.")
@click.option("--port", type=int, help="Port of the server [default: 8000].")
def rehearse(
    *, players: int, rounds: int, pace: str, seed: int, course: str, data: Path | None, port: int | None
) -> None:
    """Play a demo review against the running server, with simulated players."""
    from quizroom.cli.desk_link import new_desk_key  # noqa: PLC0415 - `serve` must not load this first
    from quizroom.cli.places import clear_ends, own_address, settings_of  # noqa: PLC0415 - likewise
    from quizroom.rehearsal.entry import CannotRehearse  # noqa: PLC0415 - likewise
    from quizroom.rehearsal.pace import PACES  # noqa: PLC0415 - likewise
    from quizroom.rehearsal.rehearsal import Rehearsal  # noqa: PLC0415 - likewise
    from quizroom.rehearsal.rehearsal import rehearse as play  # noqa: PLC0415 - likewise

    settings = settings_of({"data": data, "port": port}, make_data_folder=True)
    rehearsal = Rehearsal(players=players, rounds=rounds, pace=PACES[pace], seed=seed, course=course)
    with clear_ends(settings):
        try:
            play(
                rehearsal,
                address=own_address(settings, settings.port),
                new_desk_key=lambda: new_desk_key(settings.database_url),
                tell=click.echo,
            )
        except CannotRehearse as reason:
            raise click.ClickException(str(reason)) from reason
