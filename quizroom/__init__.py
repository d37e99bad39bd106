"""quizroom: a self-hosted server for live class reviews of muscular anatomy."""

__version__ = "0.1.0"
