"""The content that comes with the program, read once for all tests."""

from functools import cache

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.load import content_folder, load_content


@cache
def content() -> Catalogue:
    """The catalogue; a test that wants it wants every file of it readable."""
    loaded = load_content(content_folder())
    assert loaded.catalogue is not None, loaded.findings
    return loaded.catalogue
