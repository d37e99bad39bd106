"""What the desk is told of the file of a review."""

from quizroom.exchange.review_file.faults import BadReviewFile
from quizroom.exchange.review_file.model import SeatTaken
from quizroom.exchange.review_file.reading import ReadReview
from quizroom.knowledge.catalogue import Catalogue
from quizroom.protocol.review_files import FiledItem, FileFault, ReviewFilePreview, ReviewFileRefused
from quizroom.room.events import AnswerAccepted, ReviewEnded
from quizroom.views.moment import milliseconds

NOT_TAKEN = "This file cannot be taken; nothing of it was. Mend what is listed, or have it written anew."
LOOK_ONLY = "It holds what happened, so it comes as a finished review, to be looked at but not changed."
LAID_OUT = "It comes as a prepared review with the door shut, and its items as they stand here."
NO_COURSE = "This server has no course list {}: its items can be asked and dropped, but not swapped."


def refused_face(bad: BadReviewFile) -> ReviewFileRefused:
    """Why a file was not taken."""
    faults = tuple(FileFault(path=fault.path, text=fault.text) for fault in bad.faults)
    return ReviewFileRefused(problem=NOT_TAKEN, faults=faults)


def preview_face(review: ReadReview, catalogue: Catalogue) -> ReviewFilePreview:
    """What a file holds."""
    file, steps = review.file, review.steps
    ended = next((step.at for step in steps if isinstance(step, ReviewEnded)), None)
    known = file.plan.course in catalogue.courses
    return ReviewFilePreview(
        title=file.plan.title,
        course=file.plan.course_title,
        played=file.happened is not None,
        items=tuple(
            FiledItem(
                stem=item.stem,
                format=item.format,
                by_host=item.by_host,
                has_picture=item.picture is not None,
            )
            for item in file.items
        ),
        players=sum(isinstance(step, SeatTaken) for step in steps),
        answers=sum(isinstance(step, AnswerAccepted) for step in steps),
        ended_at=None if ended is None else milliseconds(ended),
        remarks=(
            LOOK_ONLY if file.happened else LAID_OUT,
            *(() if known or file.happened else (NO_COURSE.format(file.plan.course),)),
        ),
    )
