"""`quizroom rehearse`."""

import click


@click.command()
def rehearse() -> None:
    """Play a demo review against the running server, with simulated players."""
    raise NotImplementedError
