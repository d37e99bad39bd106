"""The JSON Schema of the file (draft 2020-12), made from the classes that read it.

`python -m quizroom.exchange.review_file.schema` prints it; it is kept beside this package in
`review_file.schema.json`, and a test compares.
"""

import json
import sys
from typing import Any

from pydantic import TypeAdapter

from quizroom.exchange.review_file.faults import LARGEST_NUMBER, LONGEST_TEXT
from quizroom.exchange.review_file.model import ReviewFile
from quizroom.exchange.review_file.steps import step_adapter

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def review_schema() -> dict[str, Any]:
    """The schema; what it cannot say, such as that a key fits its options, the reader checks."""
    inputs: list[tuple[str, Any, TypeAdapter[Any]]] = [
        ("ReviewFile", "validation", TypeAdapter(ReviewFile)),
        ("Step", "validation", step_adapter()),
    ]
    refs, made = TypeAdapter.json_schemas(inputs)
    definitions = made["$defs"]
    definitions["Step"] = refs["Step", "validation"]
    definitions["Happened"]["properties"]["steps"]["items"] = {"$ref": "#/$defs/Step"}
    for definition in definitions.values():
        _close(definition)
    return {
        "$schema": DIALECT,
        "title": "A review of quizroom, version 1",
        "$ref": "#/$defs/ReviewFile",
        "$defs": definitions,
    }


def _close(part: Any) -> None:
    """Nothing besides what is named, no endless text, no number that is not the same everywhere."""
    if isinstance(part, list):
        for one in part:
            _close(one)
    if not isinstance(part, dict):
        return
    if part.get("type") == "object" and "properties" in part:
        part["additionalProperties"] = False
    if part.get("type") == "string" and not {"const", "enum", "maxLength", "format"} & part.keys():
        part["maxLength"] = LONGEST_TEXT
    if part.get("type") == "integer":
        part.setdefault("maximum", LARGEST_NUMBER - 1)
    for one in part.values():
        _close(one)


if __name__ == "__main__":
    sys.stdout.write(json.dumps(review_schema(), indent=1, sort_keys=True) + "\n")
