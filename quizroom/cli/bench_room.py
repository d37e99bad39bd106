"""`quizroom bench room`."""

import click


@click.command("room")
@click.option(
    "--players", type=click.IntRange(10, 5000), multiple=True, help="Size of the room; may be repeated."
)
@click.option("--quick", is_flag=True, help="A small try of everything: 100 players, goals are not judged.")
def bench_room(players: tuple[int, ...], quick: bool) -> None:  # noqa: FBT001 - click hands options over by name
    """Fill rooms of a real server on one core, beside plain websockets that send the same bytes.

    Ends with an error that names the goals that were missed; they are set for 2000 players.
    """
    from quizroom.measuring.processes import CannotMeasure  # noqa: PLC0415 - not before `serve` patches
    from quizroom.measuring.room import SIZES, measure  # noqa: PLC0415 - likewise
    from quizroom.settings import Settings  # noqa: PLC0415 - likewise

    sizes = players or ((100,) if quick else SIZES)
    try:
        found = measure(sizes, quick=quick, gather_ms=Settings().gather_ms, tell=click.echo)
    except CannotMeasure as reason:
        raise click.ClickException(str(reason)) from reason
    missed = [f"{each.size} players: {sentence}" for each in found for sentence in each.missed]
    if missed:
        raise click.ClickException("\n  ".join(("Goals were missed:", *missed)))
