"""`quizroom typed`."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from quizroom.cli.askable import is_askable, not_askable
from quizroom.cli.unknown import no_such

if TYPE_CHECKING:
    from quizroom.knowledge.catalogue import Catalogue
    from quizroom.knowledge.model import Course

_CHOICES = ["accept", "half", "exact"]


@click.command()
@click.argument("text")
@click.option(
    "--for", "concept", required=True, help="Id of what is asked for: a muscle, a landmark, a nerve."
)
@click.option("--course", "course_id", help="Id of a course list, for its words and wishes [default: none].")
@click.option(
    "--spelling", type=click.Choice(_CHOICES), help="What a misspelling is worth [default: the course's]."
)
@click.option(
    "--specificity", type=click.Choice(_CHOICES), help="What the whole is worth for a part, likewise."
)
@click.option("--content", "folder", type=click.Path(path_type=Path, file_okay=False), help="Content folder.")
def typed(text: str, concept: str, course_id: str | None, folder: Path | None, **wishes: Any) -> None:
    """Say how TEXT would be marked where CONCEPT is asked for, and why."""
    from quizroom.cli.places import catalogue_of  # noqa: PLC0415 - not before `serve` patches
    from quizroom.questions.syllabus import syllabus_of  # noqa: PLC0415 - likewise
    from quizroom.questions.typed import verdict  # noqa: PLC0415 - likewise
    from quizroom.questions.typed_terms import plain_terms  # noqa: PLC0415 - likewise

    catalogue = catalogue_of(folder)
    course = replace(_course(catalogue, course_id), **{name: wish for name, wish in wishes.items() if wish})
    syllabus = syllabus_of(catalogue, course)
    if not is_askable(syllabus, concept):
        raise click.ClickException(not_askable(syllabus, concept))
    terms = plain_terms(syllabus, concept, text)
    found = verdict(terms, text)
    click.echo(f"{found.kind}: {found.because}")
    click.echo(f"  accepted: {'; '.join(term for one in terms.accepted for term in one.terms)}")
    if found.concept:
        click.echo(f"  taken for: {found.concept}")


def _course(catalogue: "Catalogue", course_id: str | None) -> "Course":
    from quizroom.knowledge.model import Course  # noqa: PLC0415 - not before `serve` patches

    if course_id is None:
        return Course(id="none", title="No list", muscles=(), families=())
    if course_id not in catalogue.courses:
        raise no_such("course list", course_id, catalogue.courses)
    return catalogue.courses[course_id]
