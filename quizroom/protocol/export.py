"""The wire types as one JSON Schema, from which the browser's types are generated.

`python -m quizroom.protocol.export` prints it.
"""

import json
import sys
from typing import Any, Literal

from pydantic import TypeAdapter

from quizroom.protocol.blueprint import BlueprintGrid
from quizroom.protocol.desk_settings import DeskSettings
from quizroom.protocol.group_messages import GroupSettings
from quizroom.protocol.me import Me
from quizroom.protocol.messages import ClientMessage
from quizroom.protocol.mine import (
    FlagOfLook,
    LookAnswers,
    LookFlagged,
    LookOutcomes,
    MineProblem,
    PlanSettings,
    PracticeOrder,
    PracticeSet,
    SecondLook,
    Today,
)
from quizroom.protocol.own_items import DeskProblem, OwnItemFace, OwnLibrary, PictureKept
from quizroom.protocol.replies import Reply, Tally
from quizroom.protocol.review_files import ReviewFilePreview, ReviewFileRefused, ReviewTaken
from quizroom.views.desk_model import DeskView
from quizroom.views.own_model import OwnView
from quizroom.views.public_model import PublicView

READ = ("ClientMessage", "LookAnswers", "PracticeOrder")
"""Types that the server reads; what it fills in for absent fields is not asked of the sender."""


def wire_schema() -> dict[str, Any]:
    """One schema whose definitions hold every type of the wire."""
    kinds: tuple[tuple[str, Any], ...] = (
        ("ClientMessage", ClientMessage),
        ("Reply", Reply),
        ("Tally", Tally),
        ("PublicView", PublicView),
        ("OwnView", OwnView),
        ("DeskView", DeskView),
        ("DeskSettings", DeskSettings),
        ("BlueprintGrid", BlueprintGrid),
        ("Today", Today),
        ("SecondLook", SecondLook),
        ("LookAnswers", LookAnswers),
        ("LookOutcomes", LookOutcomes),
        ("FlagOfLook", FlagOfLook),
        ("LookFlagged", LookFlagged),
        ("PlanSettings", PlanSettings),
        ("PracticeOrder", PracticeOrder),
        ("PracticeSet", PracticeSet),
        ("MineProblem", MineProblem),
        ("GroupSettings", GroupSettings),
        ("Me", Me),
        ("OwnLibrary", OwnLibrary),
        ("OwnItemFace", OwnItemFace),
        ("PictureKept", PictureKept),
        ("DeskProblem", DeskProblem),
        ("ReviewFilePreview", ReviewFilePreview),
        ("ReviewFileRefused", ReviewFileRefused),
        ("ReviewTaken", ReviewTaken),
    )
    inputs = [(name, _mode_of(name), TypeAdapter(kind)) for name, kind in kinds]
    refs, schema = TypeAdapter.json_schemas(inputs, title="Wire")
    definitions = schema["$defs"]
    for (name, _), ref in refs.items():
        if ref != {"$ref": f"#/$defs/{name}"}:
            definitions[name] = ref
    return {
        "title": "Wire",
        "type": "object",
        "properties": {name: {"$ref": f"#/$defs/{name}"} for name, _ in kinds},
        "required": [name for name, _ in kinds],
        "additionalProperties": False,
        "$defs": definitions,
    }


def _mode_of(name: str) -> Literal["validation", "serialization"]:
    return "validation" if name in READ else "serialization"


if __name__ == "__main__":
    sys.stdout.write(json.dumps(wire_schema(), indent=1, sort_keys=True) + "\n")
