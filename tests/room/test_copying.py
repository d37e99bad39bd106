"""A copy by `changed` is the copy that the standard library makes."""

from dataclasses import dataclass, field, replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from quizroom.room.copying import changed


@dataclass(frozen=True, kw_only=True)
class Part:
    """A value as those of a room are."""

    name: str
    number: int = 0
    others: tuple[str, ...] = field(default_factory=tuple)


@given(
    st.builds(Part, name=st.text(), number=st.integers(), others=st.lists(st.text()).map(tuple)),
    st.fixed_dictionaries({}, optional={"name": st.text(), "number": st.integers()}),
)
def test_a_copy_is_as_by_replace_and_the_original_stays(part: Part, changes: dict[str, Any]) -> None:
    before = replace(part)
    copy = changed(part, **changes)
    assert copy == replace(part, **changes)
    assert (part, copy is part) == (before, False)


def test_a_field_that_there_is_not_is_refused() -> None:
    with pytest.raises(TypeError, match="Part has no bone"):
        changed(Part(name="deltoid"), bone="humerus")
