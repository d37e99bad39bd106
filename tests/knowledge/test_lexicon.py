"""Every word with its concept."""

from quizroom.knowledge.lexicon import lexicon, part_concept
from quizroom.knowledge.model import Name
from quizroom.knowledge.terms import normalise
from tests.knowledge.entries import landmark
from tests.knowledge.tiny import tiny, with_added, with_changed


def concepts(word: str) -> set[str]:
    return {term.concept for term in lexicon(tiny()).get(normalise(word), ())}


def test_names_of_all_kinds_lead_to_their_concept() -> None:
    assert concepts("M. brachialis") == {"brachialis"}
    assert concepts("Ulna") == {"ulna"}
    assert concepts("coronoid process of ulna") == {"ulna.coronoid_process"}
    assert concepts("elbow joint") == {"elbow"}
    assert concepts("Flexion") == {"flexion"}
    assert concepts("musculocutaneous nerve") == {"musculocutaneous_nerve"}
    assert concepts("brachial artery") == {"brachial_artery"}


def test_a_head_is_a_concept_of_its_own() -> None:
    head = part_concept("biceps_brachii", "long_head")
    assert concepts("long head of the biceps brachii") == {head}
    assert concepts("biceps brachii, long head") == {head}
    assert part_concept("brachialis", "") == "brachialis"


def test_a_name_that_two_landmarks_share_is_not_exact() -> None:
    terms = lexicon(tiny())[normalise("tuberosity")]
    assert {term.concept for term in terms} == {"ulna.tuberosity", "radius.tuberosity"}
    assert not any(term.exact for term in terms)


def test_a_label_stays_exact_where_the_name_is_shared() -> None:
    (term,) = lexicon(tiny())[normalise("tuberosity of the ulna")]
    assert term.exact


def test_a_name_of_one_landmark_alone_is_exact() -> None:
    assert any(term.exact for term in lexicon(tiny())[normalise("coracoid process")])


def test_a_synonym_that_is_a_name_elsewhere_is_not_exact() -> None:
    catalogue = with_added("landmarks", landmark("ulna.tip", synonyms=("coracoid process",)))
    assert not any(term.exact for term in lexicon(catalogue)[normalise("coracoid process")])


def test_a_name_given_as_ambiguous_is_never_exact() -> None:
    assert [term.exact for term in lexicon(tiny())["biceps"]] == [False]


def test_an_abbreviation_is_known_as_such() -> None:
    catalogue = with_changed("muscles", "brachialis", names=(Name(term="BR", kind="abbreviation"),))
    assert [term.standing for term in lexicon(catalogue)["br"]] == ["abbreviation"]
