"""A file that somebody hands in: everything in it is checked before anything of it is taken."""

import base64
import binascii
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache
from typing import Any

import orjson
from pydantic import TypeAdapter, ValidationError

from quizroom.exchange.picture_file import BadPicture, drawn_anew
from quizroom.exchange.review_file.faults import BadReviewFile, Fault, parsed
from quizroom.exchange.review_file.following import followed, players_of
from quizroom.exchange.review_file.item_faults import faults_of_items
from quizroom.exchange.review_file.model import FORMAT, VERSION, ReviewFile
from quizroom.exchange.review_file.plan import plan_of
from quizroom.exchange.review_file.steps import Step, step_adapter
from quizroom.questions.model import Item
from quizroom.room.events import Event, ReviewPrepared
from quizroom.room.folding import begin
from quizroom.room.state import Plan
from quizroom.service.pictures import Drawing

NOT_OURS = f'This is no review of ours: at its top stands no "format": "{FORMAT}".'
TOO_NEW = f"The file is of another version than {VERSION}. Use a newer release to read it."


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadReview:
    """A review that may be taken: nothing in it is wrong. `pictures` are by their names in the file."""

    file: ReviewFile
    steps: tuple[Step, ...]
    pictures: Mapping[str, Drawing]


def read_review(body: bytes) -> ReadReview:
    """The review in a file.

    Raises:
        BadReviewFile: with the places at fault; nothing was taken.
    """
    read = parsed(body)
    if not isinstance(read, dict) or read.get("format") != FORMAT:
        raise BadReviewFile((Fault(path="format", text=NOT_OURS),))
    if read.get("version") != VERSION:
        raise BadReviewFile((Fault(path="version", text=TOO_NEW),))
    file = _validated(_adapter(), body, "")
    happened = file.happened
    steps = (
        ()
        if happened is None
        else tuple(
            _validated(step_adapter(), orjson.dumps(step), f"happened.steps.{place}").event
            for place, step in enumerate(happened.steps)
        )
    )
    pictures = _pictures(file)
    review = ReadReview(file=file, steps=steps, pictures=pictures)
    _refuse_faulty(review)
    return review


def events_of(
    review: ReadReview, room_id: str, host: str, plan: Plan, names: Mapping[str, str]
) -> tuple[Event, ...]:
    """The log of a played review under another roof: its room, its host, its pictures' new names.

    Raises:
        BadReviewFile: naming the first step that cannot be followed.
    """
    happened = review.file.happened
    if happened is None:
        raise BadReviewFile((Fault(path="happened", text="Nothing has happened in this review."),))
    if happened.prepared_at.tzinfo is None:
        text = "Times have their zone, such as 2031-09-03T12:00:00Z."
        raise BadReviewFile((Fault(path="happened.prepared_at", text=text),))
    items = items_of(review, names)
    first = ReviewPrepared(room=room_id, host=host, plan=plan, items=items, at=happened.prepared_at)
    steps = tuple(_renamed(step, names) for step in review.steps)
    found = followed(begin(first), steps, players_of(steps, room_id))
    if isinstance(found, Fault):
        raise BadReviewFile((found,))
    return (first, *found)


def items_of(review: ReadReview, names: Mapping[str, str]) -> tuple[Item, ...]:
    """The items with the new names of their pictures."""
    return tuple(_with_name(item, names) for item in review.file.items)


def _renamed(step: Any, names: Mapping[str, str]) -> Step:
    if hasattr(step, "item"):
        changed: Step = replace(step, item=_with_name(step.item, names))
        return changed
    same: Step = step
    return same


def _with_name(item: Item, names: Mapping[str, str]) -> Item:
    return (
        item
        if item.picture is None
        else replace(item, picture=replace(item.picture, name=names[item.picture.name]))
    )


def _refuse_faulty(review: ReadReview) -> None:
    twins = [step.item for step in review.steps if hasattr(step, "item")]
    faults = [*faults_of_items(review.file.items)]
    for place, item in enumerate((*review.file.items, *twins)):
        if item.picture is not None and item.picture.name not in review.pictures:
            faults.append(
                Fault(path=f"items.{place}.picture.name", text="No picture of the file has this name.")
            )
    if faults:
        raise BadReviewFile(tuple(faults))
    if review.file.happened is not None:
        names = {name: name for name in review.pictures}
        events_of(review, "0" * 16, "", plan_of(review.file, capacity=1, imported=True), names)


def _pictures(file: ReviewFile) -> dict[str, Drawing]:
    found: dict[str, Drawing] = {}
    faults: list[Fault] = []
    for place, picture in enumerate(file.pictures):
        path = f"pictures.{place}"
        if picture.name in found:
            faults.append(Fault(path=f"{path}.name", text="Another picture has this name."))
        try:
            found[picture.name] = drawn_anew(base64.b64decode(picture.body, validate=True))
        except binascii.Error:
            faults.append(Fault(path=f"{path}.body", text="This is no base64."))
        except BadPicture as error:
            faults.append(Fault(path=f"{path}.body", text=str(error)))
    if faults:
        raise BadReviewFile(tuple(faults))
    return found


def _validated(adapter: TypeAdapter[Any], body: bytes, at: str) -> Any:
    try:
        return adapter.validate_json(body, strict=True, extra="forbid")
    except ValidationError as error:
        found = error.errors(include_url=False, include_context=False, include_input=False)
        faults = (Fault(path=_path(at, one["loc"]), text=one["msg"]) for one in found)
        raise BadReviewFile(tuple(faults)) from error


def _path(at: str, location: tuple[int | str, ...]) -> str:
    """A place as people write it; the kind of a step, which pydantic puts in between, is no part of it."""
    parts = location[1:] if at and location else location
    return ".".join(filter(None, (at, *map(str, parts)))) or "file"


@cache
def _adapter() -> TypeAdapter[ReviewFile]:
    return TypeAdapter(ReviewFile)
