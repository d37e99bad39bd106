"""What a command says of a word that nothing goes by."""

from collections.abc import Collection

import click

MOST_NAMED = 20
"""So many words at most are all named; of more only the nearest are."""


def no_such(kind: str, word: str, known: Collection[str]) -> click.ClickException:
    """The end of a command that was given an unknown word, with what it may have meant."""
    from quizroom.knowledge.suggest import suggest  # noqa: PLC0415 - not before `serve` patches

    all_known = f" (known: {', '.join(known)})" if len(known) <= MOST_NAMED else ""
    return click.ClickException(f'There is no {kind} "{word}"{all_known}: {suggest(word, known)}')
