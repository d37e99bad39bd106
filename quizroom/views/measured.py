"""What is known of the difficulty of an item from classes before."""

from dataclasses import dataclass

from quizroom.analysis.intervals import wilson
from quizroom.questions.model import Observed, Whose


@dataclass(frozen=True, slots=True, kw_only=True)
class Measured:
    """What classes did with a question before: share of those who had it right, of how many, and how sure.

    An item carries it beside its prediction, and none if fewer than five people have had the question.
    """

    right: float
    answered: int
    low: float
    """Lower end of the 95 % interval (Wilson) of `right`."""
    high: float
    whose: Whose


def measured(observed: Observed) -> Measured:
    """The share with its interval, to four places."""
    sure = wilson(observed.right, observed.answered)
    return Measured(
        right=round(observed.right / observed.answered, 4),
        answered=observed.answered,
        low=round(sure.low, 4),
        high=round(sure.high, 4),
        whose=observed.whose,
    )
