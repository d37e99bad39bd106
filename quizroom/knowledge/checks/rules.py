"""The list of all content rules, and how they are run."""

from collections.abc import Callable, Iterator, Mapping

from quizroom.knowledge.catalogue import Catalogue
from quizroom.knowledge.checks import (
    arteries,
    courses,
    known_ids,
    levels,
    muscles,
    nerves,
    sources,
    vocabulary,
)
from quizroom.knowledge.checks.flaw import Flaw
from quizroom.knowledge.finding import Finding
from quizroom.knowledge.suggest import suggest

Rule = Callable[[Catalogue], Iterator[Flaw]]

LOCAL_RULES: tuple[Rule, ...] = (
    known_ids.every_site_is_known,
    known_ids.every_nerve_is_known,
    known_ids.every_artery_is_known,
    known_ids.every_joint_and_movement_is_known,
    known_ids.every_bone_is_known,
    known_ids.every_related_landmark_is_known,
    known_ids.every_region_and_compartment_is_known,
    known_ids.every_part_is_known,
    known_ids.lookalikes_resolve,
    sources.every_fact_has_a_source,
    sources.every_source_is_known,
    muscles.every_part_has_origin_and_insertion,
    muscles.every_muscle_has_an_action,
    muscles.every_muscle_has_a_nerve,
    muscles.every_muscle_has_an_artery,
    muscles.every_fact_is_given_once,
    muscles.every_action_joint_is_crossed,
    muscles.joint_allows_the_movement,
    muscles.shortest_way_is_one,
    muscles.contested_facts_are_explained,
    muscles.every_difference_has_a_topic,
    nerves.roots_are_segments,
    nerves.roots_lie_within_the_nerve,
    nerves.main_roots_lie_within_the_roots,
    nerves.roots_come_from_the_parents,
    nerves.nerve_tree_has_no_circle,
    arteries.artery_tree_has_no_circle,
    arteries.an_artery_reaches_its_region,
    vocabulary.no_exact_name_means_two_things,
    vocabulary.every_id_means_one_thing,
    vocabulary.ids_are_never_reused,
    vocabulary.retired_tables_exist,
    vocabulary.antagonism_is_symmetric,
    vocabulary.landmarks_lie_on_bones,
    vocabulary.file_name_is_the_id,
    vocabulary.region_folder_matches,
    levels.every_level_lies_on_a_known_nerve,
    levels.levels_spare_what_their_nerve_reaches,
    levels.distal_levels_spare_more,
    courses.course_muscles_exist,
    courses.course_families_exist,
    courses.course_families_have_facts,
    courses.course_is_not_empty,
    courses.house_rules_name_facts,
    courses.preferred_terms_are_known,
)
"""Rules that make sense entry by entry, even while some entries cannot be read."""

WHOLE_RULES: tuple[Rule, ...] = (sources.every_source_is_used, vocabulary.no_orphan_landmark)
"""Rules about what is used by anything: they need every file to be readable."""


def rules_by_name() -> Mapping[str, Rule]:
    """All rules; their docstrings say what each demands."""
    return {rule.__name__: rule for rule in (*LOCAL_RULES, *WHOLE_RULES)}


def check(catalogue: Catalogue, unread: frozenset[str] = frozenset()) -> tuple[Finding, ...]:
    """Every breach of every rule, less the listed exceptions.

    `unread` are ids of entries that could not be read: they count as known, and the rules that need
    everything are left out.
    """
    rules = LOCAL_RULES if unread else (*LOCAL_RULES, *WHOLE_RULES)
    breaches = {
        rule.__name__: [flaw for flaw in rule(catalogue) if flaw.unknown not in unread] for rule in rules
    }
    exempt = {(one.rule, one.subject) for one in catalogue.exempt}
    found = [
        _finding(name, flaw)
        for name, flaws in breaches.items()
        for flaw in flaws
        if (name, flaw.subject) not in exempt
    ]
    return (*found, *exempt_entries_still_fail(catalogue, breaches))


def exempt_entries_still_fail(catalogue: Catalogue, breaches: Mapping[str, list[Flaw]]) -> Iterator[Finding]:
    """A listed exception names a rule and still fails it, else it is an error itself."""
    for position, one in enumerate(catalogue.exempt):
        subjects = {flaw.subject for flaw in breaches.get(one.rule, ())}
        if one.subject in subjects:
            continue
        known = one.rule in breaches
        near = (
            suggest(one.subject, subjects or catalogue.index.facts) if known else suggest(one.rule, breaches)
        )
        yield Finding(
            rule=exempt_entries_still_fail.__name__,
            file="exceptions.toml",
            key=f"exempt[{position}].{'subject' if known else 'rule'}",
            subject=one.subject,
            message=f'"{one.subject}" does not break "{one.rule}"' if known else f'"{one.rule}" is no rule',
            remedy=f"remove the exception, or {near}",
        )


def _finding(rule: str, flaw: Flaw) -> Finding:
    return Finding(
        rule=rule,
        file=flaw.file,
        key=flaw.key,
        subject=flaw.subject,
        message=flaw.message,
        remedy=flaw.remedy,
    )
