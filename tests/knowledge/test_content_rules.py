"""Each content rule lets the faultless knowledge base pass and finds its own breach."""

import pytest

from quizroom.knowledge.checks import check, rules_by_name
from quizroom.knowledge.model import Exempt
from tests.knowledge.breaches import BREACHES, MORE_BREACHES
from tests.knowledge.entries import CITED, act
from tests.knowledge.tiny import exempting, tables, tiny, with_changed

ALL_BREACHES = [*BREACHES.items(), *MORE_BREACHES]
FAR_ACTION = "brachialis/action/-/shoulder.flexion"


def test_the_faultless_content_breaks_no_rule() -> None:
    assert check(tiny()) == ()


def test_every_rule_has_a_bad_example() -> None:
    assert set(BREACHES) == set(rules_by_name())


def test_every_rule_says_in_its_docstring_what_it_demands() -> None:
    assert [name for name, rule in rules_by_name().items() if not rule.__doc__] == []


@pytest.mark.parametrize("number", range(len(ALL_BREACHES)), ids=lambda number: ALL_BREACHES[number][0])
def test_a_breach_is_found_by_its_rule(number: int) -> None:
    name, breach = ALL_BREACHES[number]
    found = [finding for finding in check(breach()) if finding.rule == name]
    assert found
    assert all(finding.file and finding.message and finding.remedy for finding in found)


def test_a_finding_names_file_key_fact_and_nearest_known_word() -> None:
    (finding,) = check(BREACHES["every_site_is_known"]())
    assert finding.file == "muscles/arm/brachialis.toml"
    assert finding.key == "insertions[0].site"
    assert finding.subject == "brachialis/insertion/-/ulna.tuberositas"
    assert finding.remedy == 'did you mean "ulna.tuberosity"?'


def test_all_breaches_are_told_at_once() -> None:
    catalogue = with_changed("muscles", "brachialis", sources=(), arteries=(), name="brachialis anticus")
    rules = {finding.rule for finding in check(catalogue)}
    assert rules == {"every_fact_has_a_source", "every_muscle_has_an_artery", "file_name_is_the_id"}


def far_acting(*exempt: Exempt) -> list[str]:
    """The rules that a brachialis which acts on the shoulder breaks, given listed exceptions."""
    muscles = [
        one
        for muscle in tables()["muscles"]
        for one in [
            with_changed("muscles", "brachialis", actions=(act("shoulder", "flexion"),)).muscles[muscle.id]
        ]
    ]
    return [finding.rule for finding in check(exempting(tables() | {"muscles": muscles}, *exempt))]


def exception(rule: str, subject: str) -> Exempt:
    return Exempt(rule=rule, subject=subject, reason="through a sling", sources=CITED)


def test_a_listed_exception_is_no_finding() -> None:
    assert far_acting() == ["every_action_joint_is_crossed"]
    assert far_acting(exception("every_action_joint_is_crossed", FAR_ACTION)) == []


def test_an_exception_that_no_longer_fails_is_a_finding_itself() -> None:
    needless = exception("every_action_joint_is_crossed", "brachialis/action/-/elbow.flexion")
    assert "exempt_entries_still_fail" in far_acting(needless)


def test_an_exception_to_an_unknown_rule_is_a_finding() -> None:
    (finding,) = check(exempting(tables(), exception("every_action_joint_is_crosed", FAR_ACTION)))
    assert finding.rule == "exempt_entries_still_fail"
    assert '"every_action_joint_is_crossed"' in finding.remedy


def test_references_to_unread_entries_are_not_blamed() -> None:
    catalogue = BREACHES["course_muscles_exist"]()
    assert check(catalogue, unread=frozenset({"biceps_brachi"})) == ()
