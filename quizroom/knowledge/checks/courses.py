"""Rules: a course list names what exists."""

from collections.abc import Iterator

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks.families import families_without_facts
from quizroom.knowledge.checks.flaw import Flaw, at_entry
from quizroom.knowledge.checks.references import unknown_in_entries
from quizroom.knowledge.course import FAMILIES
from quizroom.knowledge.lexicon import terms_of
from quizroom.knowledge.model import Course
from quizroom.knowledge.suggest import suggest


def course_muscles_exist(catalogue: Catalogue) -> Iterator[Flaw]:
    """Each muscle of a list, and each whose heads are asked by themselves, is known."""
    lists = ((course.id, course.muscles) for course in catalogue.courses.values())
    yield from unknown_in_entries(catalogue, "courses", "muscles", lists, catalogue.muscles)
    for course in catalogue.courses.values():
        for muscle in course.separate_parts:
            if muscle not in course.muscles:
                message, remedy = f'"{muscle}" is not on the list', suggest(muscle, course.muscles)
                yield at_entry(catalogue, "courses", course.id, message, remedy, field="separate_parts")


def course_families_exist(catalogue: Catalogue) -> Iterator[Flaw]:
    """Each item family of a course is one that can be dealt."""
    families = dict.fromkeys(map(str, FAMILIES))
    lists = ((course.id, course.families) for course in catalogue.courses.values())
    yield from unknown_in_entries(catalogue, "courses", "families", lists, families)


def course_families_have_facts(catalogue: Catalogue) -> Iterator[Flaw]:
    """The muscles of a course have facts for each of its families."""
    for course in catalogue.courses.values():
        if not course.muscles or not set(course.muscles) <= catalogue.muscles.keys():
            continue  # other rules tell that first
        for family in families_without_facts(catalogue, course):
            message = f'the muscles on the list have no facts for "{family}"'
            remedy = "drop the family, add muscles that have such facts, or mend the house rules"
            yield at_entry(catalogue, "courses", course.id, message, remedy, field="families")


def course_is_not_empty(catalogue: Catalogue) -> Iterator[Flaw]:
    """A course has muscles and families, each once."""
    for course in catalogue.courses.values():
        for field, entries in (("muscles", course.muscles), ("families", course.families)):
            if not entries or len(set(entries)) < len(entries):
                message = "empty" if not entries else "something stands twice"
                remedy = f"list each of the {field} once"
                yield at_entry(catalogue, "courses", course.id, message, remedy, field=field)


def house_rules_name_facts(catalogue: Catalogue) -> Iterator[Flaw]:
    """Each house rule is about a fact that is recorded."""
    rules = ((course.id, [rule.fact for rule in course.house_rules]) for course in catalogue.courses.values())
    yield from unknown_in_entries(catalogue, "courses", "house_rules", rules, catalogue.index.facts)


def preferred_terms_are_known(catalogue: Catalogue) -> Iterator[Flaw]:
    """A course prefers, for a known concept, one of the concept's own words; so do its abbreviations."""
    words: dict[str, set[str]] = {}
    for term in terms_of(catalogue):
        words.setdefault(term.concept, set()).add(term.text)
    for course in catalogue.courses.values():
        yield from _strange_terms(catalogue, course, words)


def _strange_terms(catalogue: Catalogue, course: Course, words: dict[str, set[str]]) -> Iterator[Flaw]:
    for concept, term in course.preferred:
        if term not in words.get(concept, ()):
            known = words.get(concept) or words
            message = f'"{term}" is no word for "{concept}"'
            remedy = suggest(term if concept in words else concept, known)
            yield at_entry(catalogue, "courses", course.id, message, remedy, field="preferred")
    every = {word for terms in words.values() for word in terms}
    for abbreviation in course.abbreviations:
        if abbreviation not in every:
            message, remedy = f'"{abbreviation}" is not known', suggest(abbreviation, every)
            yield at_entry(catalogue, "courses", course.id, message, remedy, field="abbreviations")
