"""What the program needs of the machine and its own installation, and variables that nobody reads."""

from collections.abc import Iterator, Mapping
from difflib import get_close_matches
from pathlib import Path

from quizroom.doctor.finding import Finding, fault, remark, well
from quizroom.knowledge.load import content_folder, load_content
from quizroom.open_files import raise_file_limit
from quizroom.pages.bundle import STATIC, NotBuilt, read_manifest
from quizroom.settings import PREFIX, Settings


def machine_findings(settings: Settings, environment: Mapping[str, str]) -> Iterator[Finding]:
    """All of it."""
    yield from variable_findings(environment)
    yield open_files_finding(settings.capacity)
    yield pages_finding()
    yield content_finding(settings.content or content_folder())
    if settings.days_ahead:
        yield remark(
            "Clock",
            f"The server's clock runs {settings.days_ahead} days ahead.",
            "Unset QUIZROOM_DAYS_AHEAD: it is for trying out alone.",
        )


def variable_findings(environment: Mapping[str, str]) -> Iterator[Finding]:
    """Variables that look like settings and are none."""
    known = [field.upper() for field in Settings.model_fields]
    given = [name.removeprefix(PREFIX) for name in sorted(environment) if name.startswith(PREFIX)]
    for name in given:
        if name not in known:
            near = get_close_matches(name, known, n=1)
            remedy = (
                f"Did you mean {PREFIX}{near[0]}?" if near else "Unset it, or look its name up in the README."
            )
            yield remark("Settings", f"{PREFIX}{name} is no setting, so nobody reads it.", remedy)


def open_files_finding(connections: int) -> Finding:
    """Whether so many players can be connected."""
    if too_few := raise_file_limit(connections):
        said, _, remedy = too_few.partition(". ")
        return fault("Open files", f"{said}.", f"{remedy}.")
    return well("Open files", f"{connections} players may be connected at once.")


def pages_finding(folder: Path = STATIC) -> Finding:
    """Whether the pages were built."""
    try:
        read_manifest(folder)
    except NotBuilt as reason:
        said, _, remedy = str(reason).partition(". ")
        return fault("Pages", f"{said}.", remedy)
    return well("Pages", "They have been built.")


def content_finding(folder: Path) -> Finding:
    """Whether the content can be read."""
    loaded = load_content(folder)
    if loaded.catalogue is None:
        first = loaded.findings[0]
        return fault(
            "Content",
            f"{folder} cannot be used. {first.file}: {first.message}",
            "python3 -m quizroom content check names all mistakes.",
        )
    return well("Content", f"{len(loaded.catalogue.muscles)} muscles.")
