"""The sources of wrong options as values."""

from quizroom.questions.model import DistractorSource

Rank = tuple[DistractorSource, tuple[str, ...]]
"""A source, and the concepts that it offers."""

Candidate = tuple[str, DistractorSource]
"""A wrong option with its source."""
