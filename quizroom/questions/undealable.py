"""What is said when a review cannot be dealt as it was planned."""


class CannotDeal(Exception):
    """The plan cannot be filled; the message is a sentence for people."""
